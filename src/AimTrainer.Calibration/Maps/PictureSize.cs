namespace AimTrainer.Calibration;

/// <summary>The size of a picture in whole pixels, each at least 1.</summary>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
public readonly record struct PictureSize(int Width, int Height);
