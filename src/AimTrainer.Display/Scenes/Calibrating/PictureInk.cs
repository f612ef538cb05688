using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Puts shapes on a projector's own picture: a pixel of it becomes a screen point, and small things keep their size in picture heights.</summary>
/// <param name="picture">The picture.</param>
internal sealed class PictureInk(PictureSize picture)
{
    /// <summary>Narrower than this the writing shrinks with the width.</summary>
    private const double UsualAspect = 16.0 / 9;

    private readonly List<Shape<ScreenPoint>> _shapes = [];

    public double Aspect { get; } = (double)picture.Width / picture.Height;

    /// <summary>How large writing is, 1 in a usual picture.</summary>
    public double Scale => Math.Min(1, Aspect / UsualAspect);

    public Scene<ScreenPoint> Scene() => new(LanePalette.Ground, _shapes.ToValueList());

    public void Add(Shape<ScreenPoint> shape) => _shapes.Add(shape);

    /// <summary>Adds what another ink holds, with a part of its light.</summary>
    public void Add(PictureInk other, double light) => _shapes.AddRange(
        other._shapes.Select(shape => light < 1 ? shape with { Colour = shape.Colour with { Alpha = (byte)Math.Round(shape.Colour.Alpha * light) } } : shape));

    public ScreenPoint At(ProjectorPixel pixel) => new(pixel.X / picture.Height, pixel.Y / picture.Height);

    public void Line(double width, Colour colour, params ReadOnlySpan<ScreenPoint> points) => Add(new Shape<ScreenPoint>.Stroke(ValueList.Create(points), width, colour));

    public void Disc(ScreenPoint middle, double radius, Colour colour, double ring = 0) => Add(new Shape<ScreenPoint>.Ellipse(middle, radius, radius, colour, ring));

    public void Box(double left, double top, double right, double bottom, Colour colour) =>
        Add(new Shape<ScreenPoint>.Polygon([new(left, top), new(right, top), new(right, bottom), new(left, bottom)], colour));

    public void Write(string text, double x, double baseline, double size, Colour colour, bool bold = false, TextAlign align = TextAlign.Left) =>
        Add(new Shape<ScreenPoint>.Writing(text, new ScreenPoint(x, baseline), size, align, colour, bold));

    /// <summary>Writes words in as many lines as they take, at most <paramref name="most"/>.</summary>
    /// <returns>Where the next line would stand.</returns>
    public double Words(string text, double left, double baseline, double room, double size, Colour colour, bool bold = false, int most = 6)
    {
        foreach (var line in TextFit.Lines(text, room, size, bold).Take(most))
        {
            Write(line, left, baseline, size, colour, bold);
            baseline += size * 1.75;
        }

        return baseline;
    }
}
