using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>Where a bowler who knows the path of the ball lays it down, and at what angle, so that it crosses what is aimed at.</summary>
internal static class MeantRelease
{
    private const int Rounds = 12;
    private const double CloseBoards = 1e-3;
    private const double LaydownStep = 0.05;
    private const double AngleStep = 0.01;
    private const double WidestAngle = 8;
    private const int MostOpening = 4;

    /// <summary>A change of the release, and how much of it is tried.</summary>
    private enum By
    {
        Laydown,
        Angle,
        Both,
    }

    /// <summary>
    /// Newton's method from the straight line. A line is met by laydown and angle; one target by the laydown at the angle that is meant, and
    /// where the ball cannot cross it so, by the angle. What cannot be crossed at all is come as near to as the ball goes.
    /// </summary>
    /// <param name="straight">The release along a straight line, with the speed and revs that are meant.</param>
    /// <param name="aim">What is aimed at: its first target, and its last when it is a line.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="path">How the ball runs.</param>
    public static Release Through(Release straight, Aim aim, LaneProfile lane, ISimulatedPath path)
    {
        var (release, off) = Nearest(straight, aim, lane, path, aim.IsLine ? By.Both : By.Laydown);
        for (var open = 0; off >= CloseBoards && !aim.IsLine && open <= MostOpening; open++)
        {
            // A ball that ends in the far gutter says nothing of how to turn: the line is opened a degree at a time.
            var (turned, turnedOff) = Nearest(straight with { LaunchAngleDegrees = straight.LaunchAngleDegrees + open }, aim, lane, path, By.Angle);
            (release, off) = turnedOff < off ? (turned, turnedOff) : (release, off);
        }

        return release;
    }

    private static (Release Release, double Off) Nearest(Release release, Aim aim, LaneProfile lane, ISimulatedPath path, By by)
    {
        var (best, bestOff) = (release, double.PositiveInfinity);
        for (var i = 0; i < Rounds && bestOff >= CloseBoards; i++)
        {
            var (near, far) = Misses(release, aim, lane, path);
            var off = Math.Max(Math.Abs(near), Math.Abs(far));
            if (off < bestOff)
            {
                (best, bestOff) = (release, off);
            }

            var (laydown, angle) = Change(release, near, far, aim, lane, path, by);
            release = release with
            {
                LaydownBoard = Math.Clamp(release.LaydownBoard + laydown, Board.NearEdge.Boards, Board.FarEdge.Boards),
                LaunchAngleDegrees = Math.Clamp(release.LaunchAngleDegrees + angle, -WidestAngle, WidestAngle),
            };
        }

        return (best, bestOff);
    }

    private static (double Laydown, double Angle) Change(Release release, double near, double far, Aim aim, LaneProfile lane, ISimulatedPath path, By by)
    {
        var (nearLaid, farLaid) = by == By.Angle ? (near, far) : Misses(release with { LaydownBoard = release.LaydownBoard + LaydownStep }, aim, lane, path);
        var (nearTurned, farTurned) = by == By.Laydown
            ? (near, far)
            : Misses(release with { LaunchAngleDegrees = release.LaunchAngleDegrees + AngleStep }, aim, lane, path);
        var (a, b) = ((nearLaid - near) / LaydownStep, (nearTurned - near) / AngleStep);
        var (c, d) = ((farLaid - far) / LaydownStep, (farTurned - far) / AngleStep);
        var determinant = (a * d) - (b * c);
        return by switch
        {
            By.Laydown => (Share(near, a), 0),
            By.Angle => (0, Share(near, b)),
            _ when determinant == 0 => (-near, 0),
            _ => (((b * far) - (d * near)) / determinant, ((c * near) - (a * far)) / determinant),
        };
    }

    private static double Share(double miss, double slope) => slope == 0 ? 0 : -miss / slope;

    private static (double Near, double Far) Misses(Release release, Aim aim, LaneProfile lane, ISimulatedPath path)
    {
        var (first, last) = (aim.Targets[0].Target, aim.Targets[^1].Target);
        var near = path.BoardAt(release, first.Distance, lane) - first.Centre.Boards;
        return (near, aim.IsLine ? path.BoardAt(release, last.Distance, lane) - last.Centre.Boards : 0);
    }
}
