using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>What came of the last shot, on the lane: no more than was told. A hit is a full disc, a miss an open diamond, a side alone a wedge.</summary>
internal static class ProjectorResult
{
    private const double SignInches = 1.3, TickBoards = 0.12, TrailInches = 0.45, SeenInches = 0.7;
    private const byte TrailOpacity = 170;

    public static void Add(LaneInk ink, LastShot last, Aim? shown, bool trail)
    {
        if (last is not { Told: { } told, Shot: { } shot })
        {
            return;
        }

        foreach (var result in shot.Targets)
        {
            if (shown?.Targets.AsEnumerable().Any(target => target.Target == result.Target) != true)
            {
                ProjectorTarget.Outline(ink, result.Target, ink.Palette.Path);
            }
        }

        if (trail && last.TellsWay)
        {
            Trail(ink, shot.Shot);
        }

        foreach (var target in told.Targets)
        {
            if (last.TargetOf(target) is { } place)
            {
                Target(ink, last, target, place);
            }
        }

        if (told.Targets.Count == 0)
        {
            LaneWords.By(ink, told.Held switch { true => "hit", false => "miss", null => "not measured" }, shot.Targets[^1].Target, null);
        }

        if (told.Targets.All(target => target.Miss is null) && told.Held is not null)
        {
            Beyond(ink, told.Held, shot.Targets[^1].Target);
        }
    }

    /// <summary>One target of which more is told than whether it was held.</summary>
    private static void Target(LaneInk ink, LastShot last, ToldTarget told, Target place)
    {
        var held = last.HeldOf(told);
        if (told.Miss is { } miss)
        {
            var at = place.Centre + miss;
            var (near, far) = TargetLength.SpanOf(place, ink.Lane, ink.View);
            var half = BoardOffset.FromBoards(TickBoards);
            Sign(ink, held, ink.At(at, place.Distance));
            ink.Box(at - half, at + half, near, far, ink.Palette.Text);
            LaneWords.By(ink, SceneWords.Miss(miss, ink.Hand), place, at);
        }
        else if (told.Side is { } side)
        {
            if (side != 0)
            {
                Wedge(ink, place, side, held is { } known ? known ? ink.Palette.Hit : ink.Palette.Miss : ink.Palette.Trail);
            }

            var words = side == 0 ? "on centre" : SceneWords.Side(side, ink.Hand);
            LaneWords.By(ink, held switch { true => $"hit, {words}", false => $"miss, {words}", null => words }, place, null);
        }
        else
        {
            LaneWords.By(ink, "not measured", place, null);
        }
    }

    /// <summary>A sign that says nothing of the place stands beyond the target, where no crossing could be.</summary>
    private static void Beyond(LaneInk ink, bool? held, Target place)
    {
        var (_, far) = TargetLength.SpanOf(place, ink.Lane, ink.View);
        var half = ink.HalfLength(Inches.FromInches(SignInches), far) / 12;
        Sign(ink, held, ink.At(place.Centre, Feet.FromFeet(far.Value + (1.6 * half))));
        var middle = ink.At(place.Centre, far).Across.Value;
        ink.Take(far.Value, far.Value + (3 * half), middle - SignInches, middle + SignInches);
    }

    private static void Sign(LaneInk ink, bool? held, LanePoint centre)
    {
        var radius = Inches.FromInches(SignInches);
        if (held == true)
        {
            ink.Add(new Shape<LanePoint>.Ellipse(centre, SignInches, ink.HalfLength(radius, centre.Down), ink.Palette.Hit));
            return;
        }

        // A ring of four convex parts; open, so that what lies below still shows.
        var colour = held == false ? ink.Palette.Miss : ink.Palette.Trail;
        var (outer, inner) = (ink.Diamond(centre, Inches.FromInches(SignInches * 1.35)), ink.Diamond(centre, Inches.FromInches(SignInches * 0.75)));
        for (var i = 0; i < 4; i++)
        {
            var next = (i + 1) % 4;
            ink.Add(new Shape<LanePoint>.Polygon([outer[i], outer[next], inner[next], inner[i]], colour));
        }
    }

    /// <summary>A wedge beside the target that points away from it.</summary>
    private static void Wedge(LaneInk ink, Target place, int side, Colour colour)
    {
        var (gap, length) = (BoardOffset.FromBoards(0.6 * side), BoardOffset.FromBoards(2.4 * side));
        var foot = (side > 0 ? place.InsideEdge : place.OutsideEdge) + gap;
        var half = ink.HalfLength(Inches.FromInches(SignInches), place.Distance) / 12;
        ink.Add(new Shape<LanePoint>.Polygon(
            [ink.At(foot, Feet.FromFeet(place.Distance.Value - half)), ink.At(foot, Feet.FromFeet(place.Distance.Value + half)), ink.At(foot + length, place.Distance)],
            colour));
    }

    private static void Trail(LaneInk ink, Shot shot)
    {
        var seen = ShotWay.Of(shot);
        if (seen.Count > 1)
        {
            var places = seen.Select(crossing => ink.At(crossing.Board, crossing.Distance)).ToValueList();
            ink.Add(new Shape<LanePoint>.Stroke(places, TrailInches, ink.Palette.Trail with { Alpha = TrailOpacity }));
        }

        foreach (var crossing in seen)
        {
            var centre = ink.At(crossing.Board, crossing.Distance);
            ink.Add(new Shape<LanePoint>.Ellipse(centre, SeenInches, ink.HalfLength(Inches.FromInches(SeenInches), crossing.Distance), ink.Palette.Trail));
        }
    }
}
