using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>A place on the lane and the pixel that lights it.</summary>
/// <param name="Lane">The place.</param>
/// <param name="Pixel">The pixel.</param>
/// <param name="Name">What people call it; null for none.</param>
public sealed record CalibrationMark(LanePoint Lane, ProjectorPixel Pixel, string? Name = null);
