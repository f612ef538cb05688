namespace AimTrainer.Calibration;

/// <summary>How fine a picture must be to show a target as it is graded.</summary>
/// <param name="LeastPixels">Pixels that a target must at least be wide; 3 unless set: narrower, half a pixel at either edge is a third of the target.</param>
public readonly record struct ShowingSettings(double LeastPixels = 3)
{
    /// <summary>At least 3 pixels.</summary>
    public static ShowingSettings Usual { get; } = new(3);
}
