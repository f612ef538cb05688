namespace AimTrainer.Calibration;

/// <summary>
/// A place in a projector's picture, in pixels. The origin is the outer corner of the first (top left) pixel, so that pixel's middle
/// is (0.5, 0.5).
/// </summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Down.</param>
public readonly record struct ProjectorPixel(double X, double Y);
