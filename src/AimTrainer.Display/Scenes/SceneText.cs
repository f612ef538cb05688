using System.Globalization;
using System.Text;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>
/// A scene as text, one shape a line, the same on every machine: for tests and bug reports. Lengths are rounded to 0.001, which is a
/// thousandth of an inch on the lane and a pixel on a screen 1000 high.
/// </summary>
public static class SceneText
{
    /// <summary>A projector's scene; points read (inches across, feet down).</summary>
    public static string Write(Scene<LanePoint> scene) => Write(scene, point => Pair(point.Across.Value, point.Down.Value));

    /// <summary>A screen's scene; points read (x, y) in picture heights.</summary>
    public static string Write(Scene<ScreenPoint> scene) => Write(scene, point => Pair(point.X, point.Y));

    private static string Write<TPoint>(Scene<TPoint> scene, Func<TPoint, string> point)
        where TPoint : struct
    {
        var text = new StringBuilder();
        text.Append("ground ").Append(Hex(scene.Background)).Append('\n');
        foreach (var shape in scene.Shapes)
        {
            text.Append(Line(shape, point)).Append(' ').Append(Hex(shape.Colour)).Append('\n');
        }

        return text.ToString();
    }

    private static string Line<TPoint>(Shape<TPoint> shape, Func<TPoint, string> point)
        where TPoint : struct => shape switch
        {
            Shape<TPoint>.Polygon polygon => $"polygon {string.Join(' ', polygon.Corners.Select(point))}",
            Shape<TPoint>.Stroke stroke => $"stroke {Number(stroke.Width)}{(stroke.Closed ? " closed" : "")} {string.Join(' ', stroke.Points.Select(point))}",
            Shape<TPoint>.Ellipse ellipse => $"ellipse {point(ellipse.Centre)} {Number(ellipse.RadiusAcross)} x {Number(ellipse.RadiusAlong)}"
                + (ellipse.RingWidth > 0 ? $" ring {Number(ellipse.RingWidth)}" : ""),
            Shape<TPoint>.Writing writing => $"writing \"{writing.Text}\" {point(writing.Anchor)} {writing.Align.ToString().ToLowerInvariant()} {Number(writing.Size)}"
                + (writing.Bold ? " bold" : "") + (writing.Stretch != 1 ? $" stretch {Number(writing.Stretch)}" : ""),
            _ => throw new ArgumentException($"unknown shape {shape.GetType().Name}", nameof(shape)),
        };

    private static string Pair(double x, double y) => $"({Number(x)}, {Number(y)})";

    private static string Number(double value)
    {
        var text = value.ToString("0.###", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    private static string Hex(Colour colour) => string.Create(
        CultureInfo.InvariantCulture, $"#{colour.Red:x2}{colour.Green:x2}{colour.Blue:x2}{(colour.Alpha < 255 ? colour.Alpha.ToString("x2", CultureInfo.InvariantCulture) : "")}");
}
