namespace AimTrainer.Calibration;

/// <summary>
/// Two radial terms about the middle of the picture: a place at distance r from the middle (in half diagonals of the picture) moves to
/// r (1 + K1 r^2 + K2 r^4).
/// </summary>
/// <param name="K1">The first term; 0 is none.</param>
/// <param name="K2">The second term; 0 is none.</param>
public readonly record struct LensDistortion(double K1, double K2);
