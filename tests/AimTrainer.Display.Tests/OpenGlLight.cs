using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace AimTrainer.Display.Tests;

/// <summary>The light of a picture, pixel by pixel: 1 is white.</summary>
internal sealed class OpenGlLight
{
    private readonly double[,] _light;

    public OpenGlLight(Image<Rgba32> image)
    {
        (Width, Height) = (image.Width, image.Height);
        _light = new double[Width, Height];
        var byByte = Enumerable.Range(0, 256).Select(value => OfByte((byte)value)).ToArray();
        image.ProcessPixelRows(rows =>
        {
            for (var y = 0; y < Height; y++)
            {
                var row = rows.GetRowSpan(y);
                for (var x = 0; x < Width; x++)
                {
                    _light[x, y] = byByte[row[x].G];
                }
            }
        });
    }

    public int Width { get; }

    public int Height { get; }

    public double this[int x, int y] => _light[x, y];

    /// <summary>Source: IEC 61966-2-1, the sRGB curve.</summary>
    public static double OfByte(byte channel)
    {
        var value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }

    /// <summary>Between the middles of four pixels.</summary>
    public double Between(double x, double y)
    {
        var (left, top) = ((int)Math.Floor(x - 0.5), (int)Math.Floor(y - 0.5));
        var (a, b) = (x - 0.5 - left, y - 0.5 - top);
        return ((1 - b) * (((1 - a) * _light[left, top]) + (a * _light[left + 1, top]))) + (b * (((1 - a) * _light[left, top + 1]) + (a * _light[left + 1, top + 1])));
    }

    /// <summary>How much light there is, in white pixels, and where its middle is.</summary>
    public (double Area, double X, double Y) Weigh()
    {
        var (area, sumX, sumY) = (0.0, 0.0, 0.0);
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                var light = _light[x, y];
                area += light;
                sumX += light * (x + 0.5);
                sumY += light * (y + 0.5);
            }
        }

        return (area, sumX / area, sumY / area);
    }

    /// <summary>Where light begins and ends along a row or a column that crosses one bright shape, both edges from its brightest middle.</summary>
    public (double From, double To) Edges(bool alongRow, int line, double middle)
    {
        var centre = (int)Math.Floor(middle);
        double At(int i) => alongRow ? _light[i, line] : _light[line, i];
        var length = alongRow ? Width : Height;
        var (before, after) = (0.0, 0.0);
        for (var i = 0; i < length; i++)
        {
            if (i < centre)
            {
                before += At(i);
            }
            else
            {
                after += At(i);
            }
        }

        return (centre - before, centre + after);
    }
}
