namespace AimTrainer.Motion;

/// <summary>A pocket window, for machines.</summary>
/// <param name="LowBoard">Least board.</param>
/// <param name="HighBoard">Most.</param>
/// <param name="LowAngleDeg">Least angle, positive inward.</param>
/// <param name="HighAngleDeg">Most.</param>
/// <param name="At">Where both are taken: "contact" or "60".</param>
public sealed record AimWindowAnswer(double LowBoard, double HighBoard, double LowAngleDeg, double HighAngleDeg, string At)
{
    internal static AimWindowAnswer Of(PocketWindow window) => new(
        window.LowBoard, window.HighBoard, window.LowAngleDegrees, window.HighAngleDegrees, window.Place == WindowPlace.Contact ? "contact" : "60");
}
