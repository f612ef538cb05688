using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Splits the misses of a shot into laydown, angle and what the ball did beyond the straight line. Pure.</summary>
public static class MissSplitter
{
    /// <summary>Why a crossing that was worked out is not split.</summary>
    public const string WorkedOut =
        "the crossing was worked out between two others that reach beyond the straight part; a curve there would be taken for a cause";

    /// <summary>Why an unmeasured crossing is not split.</summary>
    public const string NotMeasured = "nobody measured the crossing";

    /// <summary>Why a shot without a plan is not split.</summary>
    public const string NoPlan =
        "one target says where to, not where from: needed are a line of two targets, or enough shots to know the usual angle";

    /// <summary>Splits a shot.</summary>
    /// <param name="shot">The shot and its targets.</param>
    /// <param name="fit">Its straight line, or why there is none.</param>
    /// <param name="plan">What its parts are held against; null when there is none.</param>
    /// <param name="lane">How far the ball is taken to run straight.</param>
    public static ShotSplit Split(ObservedShot shot, StraightFit fit, LinePlan? plan, LaneProfile lane)
    {
        var why = fit.Line is null ? fit.Why : plan is null ? NoPlan : null;
        var targets = new TargetSplit[shot.Targets.Count];
        for (var i = 0; i < targets.Length; i++)
        {
            targets[i] = Split(shot, i, fit, plan, why, lane);
        }

        return new ShotSplit(
            fit.Line,
            fit.Line is { } line && plan is not null ? line.LaydownBoard - plan.LaydownBoard : null,
            fit.Line is { } left && plan is not null ? left.LaunchAngleDegrees - plan.LaunchAngleDegrees : null,
            ValueList.Create<TargetSplit>(targets),
            why);
    }

    /// <summary>
    /// Why a crossing can have no part of its own beyond the straight line; null when it can. One that was worked out counts only when both
    /// readings it lies between are in the straight part.
    /// </summary>
    /// <param name="target">A target of the shot.</param>
    /// <param name="shot">The shot.</param>
    /// <param name="lane">How far the ball is taken to run straight.</param>
    public static string? WhyNotBent(ObservedTarget target, Shot shot, LaneProfile lane) => target.Board is null ? NotMeasured
        : target.Kind == CrossingKind.Interpolated && !HasReadingBetween(shot, target.Distance, lane.StraightDistance) ? WorkedOut
        : null;

    private static bool HasReadingBetween(Shot shot, Feet from, Feet to)
    {
        foreach (var crossing in shot.Crossings)
        {
            if (crossing.Distance >= from && crossing.Distance <= to)
            {
                return true;
            }
        }

        return false;
    }

    private static TargetSplit Split(ObservedShot shot, int index, StraightFit fit, LinePlan? plan, string? why, LaneProfile lane)
    {
        var target = shot.Targets[index];
        var straight = fit.Line?.BoardAt(target.Distance);
        var notBent = WhyNotBent(target, shot.Shot, lane);
        var bent = notBent is null ? target.Board?.Boards - straight : null;
        why ??= notBent;
        return why is null && plan is not null && fit.Line is { } line && bent is { } off
            ? new TargetSplit(
                target.Name,
                target.Distance,
                target.Miss?.Boards,
                line.LaydownBoard - plan.LaydownBoard,
                (line.BoardsAFoot - plan.BoardsAFoot) * target.Distance.Value,
                off - plan.BeyondBoards[index],
                straight,
                off,
                null)
            : new TargetSplit(target.Name, target.Distance, target.Miss?.Boards, null, null, null, straight, bent, why);
    }
}
