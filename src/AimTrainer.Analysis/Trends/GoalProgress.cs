namespace AimTrainer.Analysis;

/// <summary>How far a bowler is on the way to a goal: from the log spreads since the program began.</summary>
/// <param name="GoalBoards">The spread to reach.</param>
/// <param name="Place">Where it is measured.</param>
/// <param name="Tests">Tests since the program began.</param>
/// <param name="StartBoards">The spread at the first of them, by <see cref="CurrentLevel"/>; null below three.</param>
/// <param name="NowBoards">The spread at the newest; null below three.</param>
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
        TrendPoint[] logs = [.. points.Select((point, i) => new TrendPoint(i + 1, point.LogSpread))];
        if (CurrentLevel.AtEnd(logs) is not { Limits: { } limits } now || CurrentLevel.AtStart(logs) is not { } start)
        {
            return new GoalProgress(goalBoards, place, points.Count, null, null, null, null, GoalStanding.NotKnown);
        }

        var goal = Math.Log(goalBoards);
        return new GoalProgress(
            goalBoards,
            place,
            points.Count,
            Math.Exp(start.Value),
            Math.Exp(now.Value),
            new TrendLimits(Math.Exp(limits.Low), Math.Exp(limits.High)),
            start.Value > goal ? (start.Value - now.Value) / (start.Value - goal) : null,
            limits.High <= goal && HeldBefore(logs, goal) ? GoalStanding.Reached : limits.Low > goal ? GoalStanding.NotYet : GoalStanding.CannotTell);
    }

    /// <summary>
    /// Whether the look before said so too. The limits are looked at anew after every test, and of many looks one alone is soon lucky.
    /// </summary>
    private static bool HeldBefore(TrendPoint[] logs, double goal) => CurrentLevel.AtEnd(logs[..^1]) is { Limits: { } limits } && limits.High <= goal;
}
