namespace AimTrainer.Domain;

/// <summary>What happens when a walking line has done its last place.</summary>
public enum WalkEnd
{
    /// <summary>The block is over.</summary>
    Stop,

    /// <summary>The line walks back, and so on to and fro.</summary>
    Turn,
}
