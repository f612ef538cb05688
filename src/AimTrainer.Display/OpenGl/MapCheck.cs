using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>Whether a projector map can be drawn by at all.</summary>
public static class MapCheck
{
    private const double LaneWidth = 41.5;
    private const double LeastPixelsToSquareInch = 1e-3;
    private const int StepsAcross = 8;
    private const int StepsAlong = 120;

    /// <summary>What is wrong with a map and what to do, in one line; null when it can be drawn by.</summary>
    public static string? ProblemOf(ProjectorMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        const string Again = "calibrate this projector again";
        if (map.Picture.Width < 1 || map.Picture.Height < 1)
        {
            return FormattableString.Invariant($"the projector map is for a picture of {map.Picture.Width} x {map.Picture.Height} pixels; {Again}");
        }

        if (!Numbers(map).All(double.IsFinite))
        {
            return $"the projector map holds something that is not a finite number; {Again}";
        }

        if (!(map.Stretch.From < map.Stretch.To))
        {
            return FormattableString.Invariant($"the projector map lights a stretch from {map.Stretch.From} to {map.Stretch.To} ft, which is empty; {Again}");
        }

        var seen = SeenOf(map);
        if (seen.Count == 0)
        {
            return $"the projector map puts no part of the lane that it lights into the picture; {Again}";
        }

        if (seen.Any(place => WeightOf(map.Homography, place) > 0) && seen.Any(place => WeightOf(map.Homography, place) < 0))
        {
            return $"the projector map folds the lane: its horizon crosses the picture, with lane on both sides; {Again}, or let it light a shorter stretch";
        }

        // Pixels to a square inch: a lane drawn as a line cannot be aimed at.
        var h = map.Homography;
        var determinant = (h.M11 * ((h.M22 * h.M33) - (h.M23 * h.M32))) - (h.M12 * ((h.M21 * h.M33) - (h.M23 * h.M31))) + (h.M13 * ((h.M21 * h.M32) - (h.M22 * h.M31)));
        if (!(seen.Max(place => Math.Abs(determinant / Math.Pow(WeightOf(h, place), 3))) > LeastPixelsToSquareInch))
        {
            return $"the projector map draws the lane as a line; {Again}";
        }

        return new Lens(map).Reach is null
            ? FormattableString.Invariant(
                $"the lens terms of the projector map ({map.Distortion.K1}, {map.Distortion.K2}) fold the picture; calibrate again with fewer terms")
            : null;
    }

    /// <summary>The map with the sign that makes the third coordinate positive on the lane, and a place of the lane that is in the picture.</summary>
    internal static (Homography Map, XY Seen) FacingLane(ProjectorMap map)
    {
        var (h, seen) = (map.Homography, SeenOf(map)[0]);
        return (WeightOf(h, seen) > 0 ? h : new Homography(-h.M11, -h.M12, -h.M13, -h.M21, -h.M22, -h.M23, -h.M31, -h.M32, -h.M33), seen);
    }

    /// <summary>The third homogeneous coordinate: positive before the horizon of a map that faces the lane.</summary>
    internal static double WeightOf(Homography map, XY inches) => (map.M31 * inches.X) + (map.M32 * inches.Y) + map.M33;

    /// <summary>The inverse map, with a third coordinate that is positive where the lane is seen.</summary>
    internal static Homography Inverse(Homography h)
    {
        var (a, b, c) = ((h.M22 * h.M33) - (h.M23 * h.M32), (h.M23 * h.M31) - (h.M21 * h.M33), (h.M21 * h.M32) - (h.M22 * h.M31));
        var determinant = (h.M11 * a) + (h.M12 * b) + (h.M13 * c);
        return new Homography(
            a / determinant, ((h.M13 * h.M32) - (h.M12 * h.M33)) / determinant, ((h.M12 * h.M23) - (h.M13 * h.M22)) / determinant,
            b / determinant, ((h.M11 * h.M33) - (h.M13 * h.M31)) / determinant, ((h.M13 * h.M21) - (h.M11 * h.M23)) / determinant,
            c / determinant, ((h.M12 * h.M31) - (h.M11 * h.M32)) / determinant, ((h.M11 * h.M22) - (h.M12 * h.M21)) / determinant);
    }

    /// <summary>Places of the lane, close together, that are lit and in the picture: what lies behind a projector is not.</summary>
    private static List<XY> SeenOf(ProjectorMap map)
    {
        var seen = new List<XY>();
        var (from, to) = (Math.Max(map.Stretch.From.Value, 0) * 12, Math.Min(map.Stretch.To.Value, 60) * 12);
        for (var along = 0; along <= StepsAlong; along++)
        {
            for (var across = 0; across <= StepsAcross; across++)
            {
                var place = new XY(LaneWidth * across / StepsAcross, from + ((to - from) * along / StepsAlong));
                var (x, y) = map.Homography.Apply(place.X, place.Y);
                if (x >= 0 && y >= 0 && x <= map.Picture.Width && y <= map.Picture.Height)
                {
                    seen.Add(place);
                }
            }
        }

        return seen;
    }

    private static IEnumerable<double> Numbers(ProjectorMap map)
    {
        var h = map.Homography;
        return [h.M11, h.M12, h.M13, h.M21, h.M22, h.M23, h.M31, h.M32, h.M33, map.Distortion.K1, map.Distortion.K2];
    }
}
