namespace AimTrainer.Motion;

/// <summary>What a release file says.</summary>
/// <param name="Release">How the ball leaves the hand.</param>
public sealed record ReleaseFile(Release Release);
