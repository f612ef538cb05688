using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>A mark of the lane in a calibration.</summary>
/// <param name="Name">What people call it, counted from the right edge ("arrow 2").</param>
/// <param name="Lane">Where it is.</param>
/// <param name="Pixel">Its pixel; null until it is set.</param>
/// <param name="Skipped">Whether it is left out, because it is not to be seen, say.</param>
public sealed record PlacedMark(string Name, LanePoint Lane, ProjectorPixel? Pixel = null, bool Skipped = false);
