namespace AimTrainer.Calibration;

/// <summary>
/// What one pixel is on the lane at some place. Measured square to the lines that matter: across is the distance between two lines
/// that run down the lane one pixel apart in the picture, along that between two lines across it. So a picture that stands askew on
/// the lane counts as coarse as it looks.
/// </summary>
/// <param name="AcrossInches">Inches across the lane.</param>
/// <param name="AlongInches">Inches along the lane.</param>
public readonly record struct PixelSize(double AcrossInches, double AlongInches);
