namespace AimTrainer.Setup;

/// <summary>What a display is for.</summary>
internal enum DisplayKind
{
    /// <summary>Light on the lane, through the projector's map.</summary>
    Projector,

    /// <summary>A screen that the bowler looks up to.</summary>
    Overhead,
}
