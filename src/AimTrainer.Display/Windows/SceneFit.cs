using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Fits a scene that was built for one shape of picture into another.</summary>
internal static class SceneFit
{
    /// <summary>As large as it goes, in the middle, with the background around it.</summary>
    /// <param name="scene">The scene.</param>
    /// <param name="built">The aspect it was built for, in picture heights.</param>
    /// <param name="picture">The aspect of the picture.</param>
    public static Scene<ScreenPoint> Into(Scene<ScreenPoint> scene, double built, double picture)
    {
        if (built == picture)
        {
            return scene;
        }

        var scale = Math.Min(1, picture / built);
        var (left, top) = ((picture - (built * scale)) / 2, (1 - scale) / 2);
        ScreenPoint Moved(ScreenPoint point) => new(left + (point.X * scale), top + (point.Y * scale));
        ValueList<ScreenPoint> All(ValueList<ScreenPoint> points) => points.AsEnumerable().Select(Moved).ToValueList();
        return scene with
        {
            Shapes = scene.Shapes.AsEnumerable().Select(shape => shape switch
            {
                Shape<ScreenPoint>.Polygon polygon => polygon with { Corners = All(polygon.Corners) },
                Shape<ScreenPoint>.Stroke stroke => stroke with { Points = All(stroke.Points), Width = stroke.Width * scale },
                Shape<ScreenPoint>.Ellipse ellipse => ellipse with
                {
                    Centre = Moved(ellipse.Centre),
                    RadiusAcross = ellipse.RadiusAcross * scale,
                    RadiusAlong = ellipse.RadiusAlong * scale,
                    RingWidth = ellipse.RingWidth * scale,
                },
                Shape<ScreenPoint>.Writing writing => writing with { Anchor = Moved(writing.Anchor), Size = writing.Size * scale },
                _ => shape,
            }).ToValueList(),
        };
    }
}
