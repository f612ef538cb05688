using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>A point that a map is asked about: a place on the lane or a pixel, exactly one of them.</summary>
/// <param name="Lane">The place whose pixel is asked for.</param>
/// <param name="Pixel">The pixel whose place is asked for.</param>
public sealed record MapQuestion(LanePoint? Lane, ProjectorPixel? Pixel);
