using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>In a comparison the last way of each ball on the lane, and which is thrown next.</summary>
internal static class ProjectorBalls
{
    private const double WayInches = 0.3, SignInches = 0.45, DashFeet = 1.5, PitchFeet = 2.75, MostNameWidth = 10, WideShare = 0.65, NarrowShare = 0.5;
    private const byte WayOpacity = 100;

    /// <summary>The ways: unbroken with discs, or in dashes with signs of other shapes.</summary>
    public static void Ways(LaneInk ink, SessionSnapshot snapshot)
    {
        foreach (var (ball, shot) in BallLook.Trails(snapshot))
        {
            var colour = BallLook.HasTrailColour(ball) ? ink.Palette.Trail : ink.Palette.Next;
            var places = ShotWay.Of(shot.Shot).Select(crossing => ink.At(crossing.Board, crossing.Distance)).ToValueList();
            for (var i = 1; i < places.Count; i++)
            {
                Way(ink, places[i - 1], places[i], BallLook.IsUnbroken(ball), colour with { Alpha = WayOpacity });
                ink.TakeWay(places[i - 1], places[i], WayInches);
            }

            foreach (var place in places)
            {
                Sign(ink, ball, place, colour);
            }
        }
    }

    /// <summary>Which ball is thrown next, in the first free stretch of the lane.</summary>
    /// <param name="ink">The lane.</param>
    /// <param name="snapshot">The session.</param>
    /// <param name="turn">Which ball is due.</param>
    /// <param name="beside">Whether a result is shown as well: then fewer words, so that the lane stays dark.</param>
    public static void Next(LaneInk ink, SessionSnapshot snapshot, BallTurn turn, bool beside)
    {
        var name = TextFit.Cut(turn.Due.Name, MostNameWidth, 1, false);
        List<string> lines = turn.IsCheck ? beside ? [$"Check: {name}"] : ["Lane check:", $"throw {name}"] : [$"Throw {name}"];
        if (!beside)
        {
            lines.AddRange(BallWords.Wanted(snapshot, turn) is not null
                ? [$"{SceneWords.Whole(BallWords.CellOf(turn)!.StillWanted)} more good", BallWords.TowelOnLane]
                : [BallWords.TowelOnLane]);
        }

        LaneWords.Clear(ink, lines, beside ? NarrowShare : WideShare);
    }

    private static void Way(LaneInk ink, LanePoint from, LanePoint to, bool unbroken, Colour colour)
    {
        if (unbroken)
        {
            ink.Add(new Shape<LanePoint>.Stroke([from, to], WayInches, colour));
            return;
        }

        var feet = to.Down.Value - from.Down.Value;
        for (var start = 0.0; start < feet; start += PitchFeet)
        {
            ink.Add(new Shape<LanePoint>.Stroke([At(start), At(Math.Min(start + DashFeet, feet))], WayInches, colour));
        }

        LanePoint At(double along) => LaneInk.Moved(from, (to.Across.Value - from.Across.Value) * along / feet, along * 12);
    }

    private static void Sign(LaneInk ink, int ball, LanePoint centre, Colour colour)
    {
        var half = ink.HalfLength(Inches.FromInches(SignInches), centre.Down);
        var corners = BallLook.Corners(ball);
        if (corners.Count == 0)
        {
            ink.Add(new Shape<LanePoint>.Ellipse(centre, SignInches, half, colour));
            return;
        }

        // Corners are told with Y downward in a picture, which is toward the bowler on the lane; across counts from the right.
        ink.Add(new Shape<LanePoint>.Polygon(
            corners.Select(corner => LaneInk.Moved(centre, -corner.X * SignInches, -corner.Y * half)).ToValueList(), colour));
    }
}
