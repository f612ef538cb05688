namespace AimTrainer.Calibration;

/// <summary>How far the crosshair moves.</summary>
/// <param name="FinePixels">At a fine step.</param>
/// <param name="CoarsePixels">At a coarse step.</param>
public sealed record PlacingSettings(double FinePixels = 0.5, double CoarsePixels = 12)
{
    /// <summary>Half a pixel, which can be seen on the lane, and twelve.</summary>
    public static PlacingSettings Usual { get; } = new();
}
