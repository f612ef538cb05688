namespace AimTrainer.Analysis;

/// <summary>How far a bowler is on the way to a goal: from the straight line through the log spreads since the program began.</summary>
/// <param name="GoalBoards">The spread to reach.</param>
/// <param name="Place">Where it is measured.</param>
/// <param name="Tests">Tests since the program began.</param>
/// <param name="StartBoards">The line at the first of them; null below three.</param>
/// <param name="NowBoards">The line at the newest; null below three.</param>
/// <param name="NowLimits">Its 95 % limits, boards; null below three.</param>
/// <param name="ShareOfTheWay">From start (0) to goal (1) on the scale of logarithms; null when not known, or when the start was at the goal already.</param>
/// <param name="Standing">The outcome.</param>
public sealed record GoalProgress(
    double GoalBoards,
    TestPlace Place,
    int Tests,
    double? StartBoards,
    double? NowBoards,
    TrendLimits? NowLimits,
    double? ShareOfTheWay,
    GoalStanding Standing)
{
    /// <summary>Fewest tests for an estimate with limits.</summary>
    public const int FewestTests = 3;

    /// <summary>The progress that some tests show.</summary>
    /// <param name="goalBoards">The spread to reach, more than 0.</param>
    /// <param name="place">Where it is measured.</param>
    /// <param name="points">The tests there since the program began, oldest first.</param>
    public static GoalProgress Of(double goalBoards, TestPlace place, IReadOnlyList<TestPoint> points)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(goalBoards);
        var line = StraightTrend.Of([.. points.Select((point, i) => new TrendPoint(i + 1, point.LogSpread))]);
        if (line?.LineAt(points.Count) is not { } limits)
        {
            return new GoalProgress(goalBoards, place, points.Count, null, null, null, null, GoalStanding.NotKnown);
        }

        var (start, now, goal) = (line.At(1), line.At(points.Count), Math.Log(goalBoards));
        return new GoalProgress(
            goalBoards,
            place,
            points.Count,
            Math.Exp(start),
            Math.Exp(now),
            new TrendLimits(Math.Exp(limits.Low), Math.Exp(limits.High)),
            start > goal ? (start - now) / (start - goal) : null,
            limits.High <= goal ? GoalStanding.Reached : limits.Low > goal ? GoalStanding.NotYet : GoalStanding.CannotTell);
    }
}
