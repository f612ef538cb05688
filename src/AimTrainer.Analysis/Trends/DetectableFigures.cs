namespace AimTrainer.Analysis;

/// <summary>What a record could show by now, and what more it needs.</summary>
/// <param name="PointSpread">Standard deviation of one session's value about its trend, on the scale of the series. Null when it is not known.</param>
/// <param name="TotalAt95">Smallest total change, first to last session, that 95 % limits would show four times in five.</param>
/// <param name="TotalByRule">The same for the rule, whose limits are wider; null before its first look.</param>
/// <param name="SessionsAtThisPace">After how many sessions in all the rule would show the present pace; null when not within 480.</param>
/// <param name="SessionsForAFifth">After how many sessions in all a fall by a fifth, spread evenly over them, would show; null likewise.</param>
public sealed record DetectableFigures(
    double? PointSpread, double? TotalAt95, double? TotalByRule, int? SessionsAtThisPace, int? SessionsForAFifth)
{
    /// <summary>Fewest sessions from which the spread about the trend is worked out.</summary>
    public const int FewestSessions = 4;

    private const double Fifth = 0.2;

    /// <summary>The figures of a series.</summary>
    /// <param name="count">How many sessions there are.</param>
    /// <param name="line">The straight line through them.</param>
    /// <param name="pace">Change for each session.</param>
    /// <param name="ruleConfidence">Of the rule's limits.</param>
    /// <param name="freedom">Degrees of freedom of one session's spread where that is known: then sampling alone gives a floor.</param>
    internal static DetectableFigures Of(int count, StraightTrend? line, double? pace, double ruleConfidence, double? freedom)
    {
        double? sampled = freedom is { } known ? DetectableChange.PointSpread(known, 0) : null;
        var found = count >= FewestSessions ? line?.ResidualSpread : null;
        if ((sampled is { } floor && found is { } seen ? Math.Max(floor, seen) : found ?? sampled) is not { } spread)
        {
            return new DetectableFigures(null, null, null, null, null);
        }

        return new DetectableFigures(
            spread,
            DetectableChange.TotalLog(count, spread, 0.95),
            DetectableChange.TotalLogByRule(count, spread, ruleConfidence),
            pace is { } slope && slope != 0 ? DetectableChange.SessionsToShow(slope, spread, count, ruleConfidence) : null,
            DetectableChange.SessionsForTotal(-Math.Log(1 - Fifth), spread, count, ruleConfidence));
    }
}
