using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>
/// How much light a scene gives as a whole, so that no scene dazzles: the mean luminance as a share of all white. An estimate from
/// above: shapes that overlap are counted each, and letters with the share of their boxes that digits cover.
/// </summary>
public static class SceneLight
{
    /// <summary>The most that a scene for a projector may give on the whole lane: a twentieth of all white, a choice of ours.</summary>
    public const double MostOnLane = 0.05;

    // Measured on digits, the densest of usual text, in the program's own face: Inter Medium and Bold, for boxes as TextRuler gives them.
    private const double InkShare = 0.36, BoldInkShare = 0.44;

    /// <summary>Mean luminance on the lane from the foul line to the head pin, 0 to 1.</summary>
    /// <param name="scene">A projector's scene.</param>
    /// <param name="lane">The lane, for its area.</param>
    public static double Mean(Scene<LanePoint> scene, LaneProfile lane) =>
        Mean(scene, point => (point.Across.Value, point.Down.Value * 12), lane.Width.Value * LaneProfile.HeadPin.Value * 12);

    /// <summary>Mean luminance of a screen, 0 to 1.</summary>
    /// <param name="scene">A screen's scene.</param>
    /// <param name="aspect">Its width in picture heights.</param>
    public static double Mean(Scene<ScreenPoint> scene, double aspect) => Mean(scene, point => (point.X, point.Y), aspect);

    private static double Mean<TPoint>(Scene<TPoint> scene, Func<TPoint, (double X, double Y)> place, double area)
        where TPoint : struct =>
        Math.Min(1, Luminance.Of(scene.Background) + (scene.Shapes.Sum(shape => Area(shape, place) * Luminance.Of(shape.Colour) * shape.Colour.Alpha / 255) / area));

    private static double Area<TPoint>(Shape<TPoint> shape, Func<TPoint, (double X, double Y)> place)
        where TPoint : struct => shape switch
        {
            Shape<TPoint>.Polygon polygon => AreaOf(polygon.Corners.Select(place).ToList()),
            Shape<TPoint>.Stroke stroke => (LengthOf(stroke.Points.Select(place).ToList(), stroke.Closed) * stroke.Width) + (Math.PI * stroke.Width * stroke.Width / 4),
            Shape<TPoint>.Ellipse ellipse => Math.PI * ((ellipse.RadiusAcross * ellipse.RadiusAlong)
                - (ellipse.RingWidth > 0 ? Math.Max(0, ellipse.RadiusAcross - ellipse.RingWidth) * Math.Max(0, ellipse.RadiusAlong - ellipse.RingWidth) : 0)),
            Shape<TPoint>.Writing writing => TextRuler.Width(writing.Text, writing.Size, writing.Bold) * writing.Size * writing.Stretch * (writing.Bold ? BoldInkShare : InkShare),
            _ => throw new ArgumentException($"unknown shape {shape.GetType().Name}", nameof(shape)),
        };

    private static double AreaOf(List<(double X, double Y)> corners)
    {
        var twice = 0.0;
        for (var i = 0; i < corners.Count; i++)
        {
            var (from, to) = (corners[i], corners[(i + 1) % corners.Count]);
            twice += (from.X * to.Y) - (to.X * from.Y);
        }

        return Math.Abs(twice) / 2;
    }

    private static double LengthOf(List<(double X, double Y)> points, bool closed)
    {
        var length = 0.0;
        for (var i = 0; i < points.Count - (closed ? 0 : 1); i++)
        {
            var (from, to) = (points[i], points[(i + 1) % points.Count]);
            length += Math.Sqrt(((from.X - to.X) * (from.X - to.X)) + ((from.Y - to.Y) * (from.Y - to.Y)));
        }

        return length;
    }
}
