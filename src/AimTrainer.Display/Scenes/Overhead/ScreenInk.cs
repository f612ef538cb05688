using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Puts shapes on a screen.</summary>
internal sealed class ScreenInk(ScreenPalette palette, double aspect)
{
    private readonly List<Shape<ScreenPoint>> _shapes = [];

    /// <summary>Height of a capital: main figures an eighth of the picture, small words a twentieth.</summary>
    public const double Main = 0.125, Small = 0.05;

    /// <summary>Free room at the picture's edges.</summary>
    public const double Margin = 0.035;

    public ScreenPalette Palette => palette;

    public double Aspect => aspect;

    public Scene<ScreenPoint> Scene() => new(palette.Ground, _shapes.ToValueList());

    public void Add(Shape<ScreenPoint> shape) => _shapes.Add(shape);

    public void Box(double left, double top, double right, double bottom, Colour colour) =>
        Polygon(colour, (left, top), (right, top), (right, bottom), (left, bottom));

    public void Polygon(Colour colour, params ReadOnlySpan<(double X, double Y)> corners)
    {
        var points = new ScreenPoint[corners.Length];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = new ScreenPoint(corners[i].X, corners[i].Y);
        }

        Add(new Shape<ScreenPoint>.Polygon(ValueList.Create<ScreenPoint>(points), colour));
    }

    public void Write(string text, double x, double baseline, double size, Colour colour, bool bold = false, TextAlign align = TextAlign.Left) =>
        Add(new Shape<ScreenPoint>.Writing(text, new ScreenPoint(x, baseline), size, align, colour, bold));

    /// <summary>A hit is a full disc, a miss an open diamond, and what nobody measured a ring.</summary>
    public void Sign(bool? held, double x, double y, double radius, byte opacity = 255)
    {
        switch (held)
        {
            case true:
                Add(new Shape<ScreenPoint>.Ellipse(new ScreenPoint(x, y), radius, radius, palette.Hit with { Alpha = opacity }));
                break;
            case false:
                Diamond(x, y, radius, palette.Miss with { Alpha = opacity });
                break;
            default:
                Add(new Shape<ScreenPoint>.Ellipse(new ScreenPoint(x, y), radius, radius, palette.Trail with { Alpha = opacity }, radius * 0.3));
                break;
        }
    }

    /// <summary>The sign of a ball of a comparison, by its place in the drill's order from 0.</summary>
    public void BallSign(int ball, double x, double y, double radius)
    {
        var colour = BallLook.HasTrailColour(ball) ? palette.Trail : palette.Next;
        var corners = BallLook.Corners(ball);
        if (corners.Count == 0)
        {
            Add(new Shape<ScreenPoint>.Ellipse(new ScreenPoint(x, y), radius, radius, colour));
            return;
        }

        Add(new Shape<ScreenPoint>.Polygon(corners.Select(corner => new ScreenPoint(x + (corner.X * radius), y + (corner.Y * radius))).ToValueList(), colour));
    }

    private void Diamond(double x, double y, double radius, Colour colour)
    {
        var (outer, inner) = (radius * 1.15, radius * 0.6);
        Span<(double X, double Y)> turns = [(0, -1), (1, 0), (0, 1), (-1, 0), (0, -1)];
        for (var i = 0; i < 4; i++)
        {
            var (from, to) = (turns[i], turns[i + 1]);
            Polygon(
                colour,
                (x + (from.X * outer), y + (from.Y * outer)),
                (x + (to.X * outer), y + (to.Y * outer)),
                (x + (to.X * inner), y + (to.Y * inner)),
                (x + (from.X * inner), y + (from.Y * inner)));
        }
    }
}
