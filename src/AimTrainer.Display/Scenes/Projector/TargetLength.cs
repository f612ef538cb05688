using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>
/// How long a target is drawn along the lane. Its length is for the eye alone: what is graded is the crossing of its middle line. It
/// is chosen so that the bowler sees it four fifths as high as wide, but never lower than 0.14 degrees, which from 25 ft behind
/// is still more than the 5 minutes of arc of the smallest letter that a usual eye can read (Snellen), and never higher than 0.35 degrees,
/// beyond which a ball that crosses at an angle would enter it on other boards than it is graded on.
/// </summary>
public static class TargetLength
{
    /// <summary>Seen height for seen width.</summary>
    public const double Shape = 0.8;

    /// <summary>Least and greatest seen height, in degrees.</summary>
    public const double LeastSeen = 0.14, MostSeen = 0.35;

    private const double ShortestFeet = 0.5;

    /// <summary>Where a target starts and ends along the lane: as much before its distance as beyond, and not before the foul line unless it lies on it.</summary>
    /// <param name="target">The target.</param>
    /// <param name="lane">The lane, for the width of its boards.</param>
    /// <param name="view">Where the bowler stands.</param>
    public static (Feet Near, Feet Far) SpanOf(Target target, LaneProfile lane, BowlerView view)
    {
        var wide = view.SeenWidth(lane.InchesOf(target.Width), target.Distance).Value;
        var seen = Degrees.FromDegrees(Math.Clamp(Shape * wide, LeastSeen, MostSeen));
        var length = view.LengthSeenUnder(seen, target.Distance).Value / 12;
        var half = Math.Max(ShortestFeet, Math.Min(length, 2 * target.Distance.Value)) / 2;
        return (Feet.FromFeet(target.Distance.Value - half), Feet.FromFeet(target.Distance.Value + half));
    }
}
