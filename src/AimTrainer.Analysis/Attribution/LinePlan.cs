using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>The way that meets the targets: from where, at what angle, and how far from straight the ball is reckoned to be at each target.</summary>
/// <param name="Kind">How it was made.</param>
/// <param name="LaydownBoard">Board at the foul line.</param>
/// <param name="BoardsAFoot">Slope, positive inside.</param>
/// <param name="LaunchAngleDegrees">The same as an angle, positive outward.</param>
/// <param name="BeyondBoards">
/// For each target how far the ball is reckoned to be from the straight line there, positive inside: laydown + slope · feet + this is its centre.
/// </param>
public sealed record LinePlan(PlanKind Kind, double LaydownBoard, double BoardsAFoot, double LaunchAngleDegrees, ValueList<double> BeyondBoards)
{
    /// <summary>The plan for a line that is thrown straight through its targets.</summary>
    /// <param name="targets">Two or more, nearest first.</param>
    /// <param name="lane">Whose boards.</param>
    /// <exception cref="ArgumentException">Fewer than two targets.</exception>
    public static LinePlan Straight(ValueList<ObservedTarget> targets, LaneProfile lane) =>
        Through(PlanKind.StraightThroughTargets, targets, 0, 0, lane);

    /// <summary>The plan for a line when it is known how the ball usually moves.</summary>
    /// <param name="targets">Two or more, nearest first.</param>
    /// <param name="usualAtFirst">How far from straight the ball usually is at the first target, boards, positive inside.</param>
    /// <param name="usualAtLast">The same at the last target.</param>
    /// <param name="lane">Whose boards.</param>
    /// <exception cref="ArgumentException">Fewer than two targets.</exception>
    public static LinePlan Usual(ValueList<ObservedTarget> targets, double usualAtFirst, double usualAtLast, LaneProfile lane) =>
        Through(PlanKind.UsualMovement, targets, usualAtFirst, usualAtLast, lane);

    /// <summary>The plan for a single target, which says where to but not where from.</summary>
    /// <param name="target">The target.</param>
    /// <param name="usualSlope">The usual slope, boards a foot, positive inside.</param>
    /// <param name="usualBeyond">How far from straight the ball usually is there, boards, positive inside.</param>
    /// <param name="lane">Whose boards.</param>
    public static LinePlan Single(ObservedTarget target, double usualSlope, double usualBeyond, LaneProfile lane) => new(
        PlanKind.UsualAngle,
        target.Centre.Boards - usualBeyond - (usualSlope * target.Distance.Value),
        usualSlope,
        StraightLine.DegreesOf(usualSlope, lane),
        [usualBeyond]);

    private static LinePlan Through(PlanKind kind, ValueList<ObservedTarget> targets, double atFirst, double atLast, LaneProfile lane)
    {
        if (targets.Count < 2)
        {
            throw new ArgumentException("a line has two targets or more", nameof(targets));
        }

        var (first, last) = (targets[0], targets[^1]);
        var start = first.Centre.Boards - atFirst;
        var slope = (last.Centre.Boards - atLast - start) / (last.Distance.Value - first.Distance.Value);
        var laydown = start - (slope * first.Distance.Value);

        // Targets between need not lie on the line: what is left there is reckoned with, so that the parts add up there too.
        var beyond = targets.Select(target => target.Centre.Boards - (laydown + (slope * target.Distance.Value))).ToValueList();
        return new LinePlan(kind, laydown, slope, StraightLine.DegreesOf(slope, lane), beyond);
    }
}
