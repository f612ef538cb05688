using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>The last step of every projection: contours in pixels, cut at the edges of the framebuffer.</summary>
internal sealed class Viewport(PictureSize size)
{
    private readonly ContourClip _clip = new();
    private readonly HalfPlane[] _sides = [new(1, 0, 0), new(-1, 0, size.Width), new(0, 1, 0), new(0, -1, size.Height)];

    public void Outline(List<XY> pixels, CoverageBuilder builder)
    {
        var left = _clip.Cut(pixels, _sides);
        for (var i = 0; i < left.Count; i++)
        {
            builder.AddEdge(Within(left[i]), Within(left[i + 1 == left.Count ? 0 : i + 1]));
        }
    }

    /// <summary>A point that was cut may lie outside by the last digit.</summary>
    private XY Within(XY pixel) => new(Math.Clamp(pixel.X, 0, size.Width), Math.Clamp(pixel.Y, 0, size.Height));
}
