using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>How sharply a ball turns: change of direction a foot around its breakpoint, from places where it was measured only.</summary>
public static class Sharpness
{
    /// <summary>Places up to here from the breakpoint count, the nearer the more.</summary>
    public const double ReachFeet = 20;

    /// <summary>
    /// The curvature of the parabola that fits the measured places around the breakpoint best, each with the weight 1 - (distance from the
    /// breakpoint / 20 ft)². A path of one curvature has that curvature, whatever the places.
    /// </summary>
    /// <param name="shot">
    /// Its crossings, breakpoint, and board at the pins. Without a measured breakpoint the crossing farthest outside takes its place.
    /// </param>
    /// <param name="lane">Gives the width of a board.</param>
    /// <returns>Degrees a foot, positive inward; null below three places, or with none at least 2 ft from the breakpoint on either side.</returns>
    public static double? Of(Shot shot, LaneProfile lane)
    {
        const double LeastFeet = 2;
        var places = new List<(double Feet, double Board)>(shot.Crossings.Count + 2);
        foreach (var crossing in shot.Crossings)
        {
            places.Add((crossing.Distance.Value, crossing.Board.Boards));
        }

        if (shot.Entry is { } entry && (places.Count == 0 || places[^1].Feet < LaneProfile.HeadPin.Value))
        {
            places.Add((LaneProfile.HeadPin.Value, entry.Boards));
        }

        if (places.Count < 2)
        {
            return null;
        }

        var turn = places.MinBy(place => place.Board).Feet;
        if (shot.Breakpoint is { Distance: { } distance } breakpoint)
        {
            turn = distance.Value;
            places.RemoveAll(place => place.Feet == turn);
            places.Add((turn, breakpoint.Board.Boards));
        }

        places.RemoveAll(place => Math.Abs(place.Feet - turn) >= ReachFeet);
        return places.Count >= 3 && places.Exists(place => place.Feet <= turn - LeastFeet) && places.Exists(place => place.Feet >= turn + LeastFeet)
            ? 2 * Bend(places, turn) * lane.BoardWidth.Value / 12 * 180 / Math.PI
            : null;
    }

    /// <summary>The square term of the weighted parabola, boards a square foot: what is left of the squares when line and mean are taken out.</summary>
    private static double Bend(List<(double Feet, double Board)> places, double turn)
    {
        double weight = 0, x1 = 0, x2 = 0, y1 = 0;
        foreach (var (feet, board) in places)
        {
            var (w, x) = Weighed(feet, turn);
            (weight, x1, x2, y1) = (weight + w, x1 + (w * x), x2 + (w * x * x), y1 + (w * board));
        }

        (x1, x2, y1) = (x1 / weight, x2 / weight, y1 / weight);
        double xx = 0, xq = 0, qq = 0, xy = 0, qy = 0;
        foreach (var (feet, board) in places)
        {
            var (w, x) = Weighed(feet, turn);
            var (a, b, c) = (x - x1, (x * x) - x2, board - y1);
            (xx, xq, qq, xy, qy) = (xx + (w * a * a), xq + (w * a * b), qq + (w * b * b), xy + (w * a * c), qy + (w * b * c));
        }

        return ((qy * xx) - (xy * xq)) / ((qq * xx) - (xq * xq));
    }

    private static (double Weight, double X) Weighed(double feet, double turn)
    {
        var x = (feet - turn) / ReachFeet;
        return (1 - (x * x), feet - turn);
    }
}
