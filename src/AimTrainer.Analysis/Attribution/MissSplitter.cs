using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Splits the misses of a shot into laydown, angle and what the ball did beyond the straight line. Pure.</summary>
public static class MissSplitter
{
    /// <summary>Why a crossing that was worked out is not split.</summary>
    public const string WorkedOut =
        "the crossing was worked out between two others beyond the straight part; a curve there would be taken for a cause";

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
            targets[i] = Split(shot.Targets[i], fit, plan, i, why, lane);
        }

        return new ShotSplit(
            fit.Line,
            fit.Line is { } line && plan is not null ? line.LaydownBoard - plan.LaydownBoard : null,
            fit.Line is { } left && plan is not null ? left.LaunchAngleDegrees - plan.LaunchAngleDegrees : null,
            ValueList.Create<TargetSplit>(targets),
            why);
    }

    /// <summary>Why a crossing can have no part of its own beyond the straight line; null when it can.</summary>
    public static string? WhyNotBent(ObservedTarget target, LaneProfile lane) => target.Board is null ? NotMeasured
        : target.Kind == CrossingKind.Interpolated && target.Distance > lane.StraightDistance ? WorkedOut
        : null;

    private static TargetSplit Split(ObservedTarget target, StraightFit fit, LinePlan? plan, int index, string? why, LaneProfile lane)
    {
        var straight = fit.Line?.BoardAt(target.Distance);
        why ??= WhyNotBent(target, lane);
        var bent = why is null || plan is null ? target.Board?.Boards - straight : null;
        if (WhyNotBent(target, lane) is not null)
        {
            bent = null;
        }

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
