namespace AimTrainer.Sessions;

/// <summary>What an entry in the history of a ball's surface is.</summary>
public enum BallSurfaceKind
{
    /// <summary>The surface was worked on.</summary>
    Work,

    /// <summary>Its roughness was measured.</summary>
    Scan,
}
