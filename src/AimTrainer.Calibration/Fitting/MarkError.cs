namespace AimTrainer.Calibration;

/// <summary>How far the map misses one mark: where the map puts it less where it was placed.</summary>
/// <param name="Mark">The mark.</param>
/// <param name="XPixels">To the right.</param>
/// <param name="YPixels">Down.</param>
/// <param name="AcrossBoards">The same on the lane, boards toward the left edge; null when its pixel lights no point of the lane's plane.</param>
/// <param name="AlongInches">The same on the lane, inches downlane; null as above.</param>
/// <param name="LeaveOneOutPixels">
/// How far the map of all other marks misses this one, in pixels: what to expect between the marks. Null when the others do not settle a map.
/// </param>
public sealed record MarkError(
    CalibrationMark Mark, double XPixels, double YPixels, double? AcrossBoards, double? AlongInches, double? LeaveOneOutPixels)
{
    /// <summary>The distance, in pixels.</summary>
    public double Pixels => Math.Sqrt((XPixels * XPixels) + (YPixels * YPixels));
}
