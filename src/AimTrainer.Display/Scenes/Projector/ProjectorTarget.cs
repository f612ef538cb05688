using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Draws targets on the lane: their outer edges across it are the very edges that are graded.</summary>
internal static class ProjectorTarget
{
    private static readonly BoardOffset WidestRim = BoardOffset.FromBoards(0.25);

    private const double NarrowDegrees = 0.2;

    /// <summary>The target that the next shot is graded against: a body, a rim, and the line across where it is graded.</summary>
    public static void Current(LaneInk ink, Target target)
    {
        var (near, far) = TargetLength.SpanOf(target, ink.Lane, ink.View);
        var (rim, along) = Rim(ink, target);
        ink.Box(target.OutsideEdge, target.InsideEdge, near, far, ink.Palette.Rim);
        ink.Box(target.OutsideEdge + rim, target.InsideEdge - rim, Moved(near, along), Moved(far, -along), ink.Palette.Target);
        ink.Box(target.OutsideEdge, target.InsideEdge, Moved(target.Distance, -along / 2), Moved(target.Distance, along / 2), ink.Palette.Rim);
        ink.Take(target, near, far);
        Guide(ink, target, near, far);
    }

    /// <summary>A target that is not the one to throw at: only its outline.</summary>
    public static void Outline(LaneInk ink, Target target, Colour colour)
    {
        var (near, far) = TargetLength.SpanOf(target, ink.Lane, ink.View);
        var (rim, along) = Rim(ink, target);
        ink.Box(target.OutsideEdge, target.OutsideEdge + rim, near, far, colour);
        ink.Box(target.InsideEdge - rim, target.InsideEdge, near, far, colour);
        ink.Box(target.OutsideEdge, target.InsideEdge, near, Moved(near, along), colour);
        ink.Box(target.OutsideEdge, target.InsideEdge, Moved(far, -along), far, colour);
        ink.Take(target, near, far);
    }

    /// <summary>Two wedges that point at a target too narrow to be found at once; clear of it, so that nobody takes them for its edges.</summary>
    private static void Guide(LaneInk ink, Target target, Feet near, Feet far)
    {
        if (ink.View.SeenWidth(ink.Lane.InchesOf(target.Width), target.Distance).Value >= NarrowDegrees)
        {
            return;
        }

        foreach (var side in new[] { -1, 1 })
        {
            var edge = side > 0 ? target.InsideEdge : target.OutsideEdge;
            var (tip, foot) = (edge + BoardOffset.FromBoards(1.5 * side), edge + BoardOffset.FromBoards(3 * side));
            ink.Add(new Shape<LanePoint>.Polygon([ink.At(tip, target.Distance), ink.At(foot, near), ink.At(foot, far)], ink.Palette.Path));
        }
    }

    /// <summary>The rim's width across, and in feet along the lane so that it looks as thick; at most an eighth of the target each way.</summary>
    private static (BoardOffset Across, double AlongFeet) Rim(LaneInk ink, Target target)
    {
        var (near, far) = TargetLength.SpanOf(target, ink.Lane, ink.View);
        var across = target.Width.Times(0.125m) < WidestRim ? target.Width.Times(0.125m) : WidestRim;
        var along = ink.View.LengthSeenAs(ink.Lane.InchesOf(across), target.Distance).Value / 12;
        return (across, Math.Min(along, (far.Value - near.Value) / 8));
    }

    private static Feet Moved(Feet from, double feet) => Feet.FromFeet(from.Value + feet);
}
