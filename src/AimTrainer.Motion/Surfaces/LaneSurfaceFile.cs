namespace AimTrainer.Motion;

/// <summary>What a lane file says.</summary>
/// <param name="Surface">The lane as it is before the first shot.</param>
/// <param name="Wear">How shots change it; null when the file does not say, and then they do not.</param>
public sealed record LaneSurfaceFile(LaneSurface Surface, Wear? Wear);
