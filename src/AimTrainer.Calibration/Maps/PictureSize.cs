using System.Globalization;

namespace AimTrainer.Calibration;

/// <summary>The size of a picture in whole pixels, each at least 1.</summary>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
public readonly record struct PictureSize(int Width, int Height)
{
    /// <summary>From the middle of the picture to a corner, in pixels: the unit of lens distortion.</summary>
    public double HalfDiagonal => Math.Sqrt(((double)Width * Width) + ((double)Height * Height)) / 2;

    /// <summary>Whether a pixel lies in the picture, its edges included.</summary>
    public bool Contains(ProjectorPixel pixel) => pixel.X >= 0 && pixel.X <= Width && pixel.Y >= 0 && pixel.Y <= Height;

    /// <summary>As people write it: <c>1920x1080</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Width}x{Height}");
}
