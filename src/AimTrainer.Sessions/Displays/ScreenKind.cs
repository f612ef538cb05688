namespace AimTrainer.Sessions;

/// <summary>What a display of a station is.</summary>
public enum ScreenKind
{
    /// <summary>The screen above the lane.</summary>
    Overhead,

    /// <summary>Light on the lane itself.</summary>
    Projector,
}
