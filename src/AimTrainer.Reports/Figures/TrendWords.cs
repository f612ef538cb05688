using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>What trends say, in plain words: what is known, between which limits, and what is not known yet.</summary>
public static class TrendWords
{
    private const double Unnoticed = 0.0005;

    private const string Alike = "Take care: sessions resemble the ones before them more than chance explains. All limits here are then narrower than they should be, "
        + "and what is said above is said too easily.";

    /// <summary>Everything about the series of a spread.</summary>
    /// <param name="figures">The figures.</param>
    /// <param name="nameOf">What people call a session, by its number in the series.</param>
    public static IEnumerable<string> Spread(TrendFigures figures, Func<double, string> nameOf)
    {
        yield return Now(figures);
        if (figures.AtRule is { } trend)
        {
            yield return $"Change: {Share(trend.Slope)} a session{Limits(trend, Share)}.";
        }

        yield return Verdict(figures);
        if (figures.NeighbourCorrelation > figures.NeighboursAlike)
        {
            yield return Alike;
        }

        foreach (var line in Detectable(figures).Append(Curve(figures.Curves)).Concat(Prompts(figures, nameOf, log => Boards(Math.Exp(log)))))
        {
            yield return line;
        }
    }

    /// <summary>Everything about a series that is no spread.</summary>
    /// <inheritdoc cref="Spread"/>
    public static IEnumerable<string> Other(TrendFigures figures, Func<double, string> nameOf)
    {
        if (figures.AtRule is { } trend)
        {
            yield return $"Change: {Number(trend.Slope)} a session{Limits(trend, Number)}.";
        }

        yield return figures.AtRule is null or { Low: null }
            ? "Whether it rises or falls is not known: too few sessions, or all equal."
            : figures.AtRule.Side switch
            {
                < 0 => "It falls: the limits leave out no change. At a single look; looking again and again would find a fall by chance.",
                > 0 => "It rises: the limits leave out no change. At a single look; looking again and again would find a rise by chance.",
                _ => "Whether it rises or falls cannot be said.",
            };
        if (figures.NeighbourCorrelation > figures.NeighboursAlike)
        {
            yield return Alike;
        }

        yield return Curve(figures.Curves);
        foreach (var line in Prompts(figures, nameOf, Number))
        {
            yield return line;
        }
    }

    /// <summary>How the mean miss stands and moves.</summary>
    public static string Bias(TrendFigures figures, Hand hand)
    {
        if (figures.Now is not { } level)
        {
            return "Mean miss: not known, no test yet.";
        }

        var now = $"Mean miss: {FigureWords.Miss(level.Value, hand)} now"
            + (level.Limits is { } limits ? $" (95 %: {FigureWords.Miss(limits.Low, hand)} to {FigureWords.Miss(limits.High, hand)})" : "");
        return figures.AtRule is { Low: { } low, High: { } high } trend
            ? $"{now}; change a session: {Moves(trend.Slope, hand)} ({Percent(trend.Confidence)}: {Moves(low, hand)} to {Moves(high, hand)})."
            : $"{now}; how it moves is not known yet.";
    }

    /// <summary>What lasts from one visit to the next.</summary>
    public static string Retention(RetentionFigures retention)
    {
        var pairs = FigureWords.Count(retention.Pairs.Count, "pair");
        return retention is { MeanLogChange: { } change, LogChangeLimits: { } limits }
            ? $"From the end of one session to the start of the next ({pairs}, {FigureWords.Number(retention.Pairs.Average(pair => pair.Days))} days between on average): "
                + $"the spread is {Share(change)} at the start (95 %: {Share(limits.Low)} to {Share(limits.High)})."
            : $"What lasts from one session to the next is not known: {pairs} of an end test and the next start test, "
                + $"{Analysis.Retention.FewestPairs} are needed, of at least {Analysis.Retention.FewestShots} shots each.";
    }

    /// <summary>A program as it stands.</summary>
    public static IEnumerable<string> Program(ProgramView view)
    {
        var over = view.Weeks.AsEnumerable().Count(week => week.Over);
        yield return $"Program: {FigureWords.Count(view.Plan.Weeks, "week")} from {Day(view.Plan.Starts)}, {FigureWords.Count(view.Plan.SessionsAWeek, "session")} a week. "
            + $"{FigureWords.Count(over, "week")} over: {view.DoneSoFar} of {FigureWords.Count(view.PlannedSoFar, "planned session")} done.";
        yield return "By week, done of planned: " + string.Join(", ", view.Weeks.Select(week => $"{week.Done}/{week.Planned}{(week.Over ? "" : " (not over)")}")) + ".";
        if (view.Goal is { } goal)
        {
            yield return Goal(goal);
        }
    }

    /// <summary>A day: 2026-09-01.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The UTC day of a moment.</summary>
    public static string Day(DateTimeOffset at) => Day(DateOnly.FromDateTime(at.UtcDateTime));

    private static string Goal(GoalProgress goal)
    {
        var what = $"Goal: a spread of {Boards(goal.GoalBoards)} {goal.Place}";
        if (goal is not { StartBoards: { } start, NowBoards: { } now, NowLimits: { } limits })
        {
            return $"{what}. Where it stands is not known: {FigureWords.Count(goal.Tests, "test")} since the program began, {GoalProgress.FewestTests} are needed.";
        }

        var standing = goal.Standing switch
        {
            GoalStanding.Reached => "reached",
            GoalStanding.NotYet => "not reached yet",
            _ => "cannot be told yet",
        };
        var way = goal is { ShareOfTheWay: { } share, Standing: not GoalStanding.Reached }
            ? share > 0 ? $"; best guess {FigureWords.Percent(share)} of the way from {Boards(start)}" : $"; not nearer than the {Boards(start)} of the beginning" : "";
        return $"{what}: {standing}. Now {Boards(now)} (95 %: {FigureWords.TwoPlaces(limits.Low)} to {FigureWords.TwoPlaces(limits.High)}){way}.";
    }

    private static string Now(TrendFigures figures) => figures.Now switch
    {
        null => "Spread: not known, no test yet.",
        { Limits: { } limits, Sessions: var sessions } now =>
            $"Spread now: {Boards(Math.Exp(now.Value))} (95 %: {Range(limits)}), by the line through the newest {sessions} tests.",
        { Sessions: var sessions } now => $"Spread now: {Boards(Math.Exp(now.Value))}; {FigureWords.Count(sessions, "test")} only, no interval yet.",
    };

    private static string Verdict(TrendFigures figures)
    {
        var rule = figures.Rule!;
        var confidence = Percent(rule.Confidence);
        return rule.Verdict switch
        {
            ImprovementVerdict.TooFew =>
                $"Whether it changes is not known: the first look needs {rule.NextLookAt} sessions, {rule.NextLookAt - figures.Count} more.",
            ImprovementVerdict.Improved =>
                $"Improved: at the look after {rule.Looks[^1].Sessions} sessions all of the {confidence} interval lies below no change. Next look at {rule.NextLookAt}.",
            ImprovementVerdict.Worse =>
                $"The spread grew: at the look after {rule.Looks[^1].Sessions} sessions all of the {confidence} interval lies above no change. Next look at {rule.NextLookAt}.",
            _ => $"Neither less nor more spread can be said at the look after {rule.Looks[^1].Sessions} sessions ({confidence} limits). "
                + $"The next look is at {rule.NextLookAt} sessions, {rule.NextLookAt - figures.Count} more.",
        };
    }

    private static IEnumerable<string> Detectable(TrendFigures figures)
    {
        var detectable = figures.Detectable;
        if (detectable.TotalByRule is { } total)
        {
            yield return $"By now this record shows a fall of {FigureWords.Percent(1 - Math.Exp(-total))} or more, first session to last, four times in five; "
                + "a smaller one it may miss.";
        }

        if (figures.Rule!.Verdict is ImprovementVerdict.Improved or ImprovementVerdict.Worse)
        {
            yield break;
        }

        if (detectable.SessionsAtThisPace is { } pace)
        {
            yield return $"If it goes on at this pace, {pace} sessions in all would settle it: {pace - figures.Count} more.";
        }
        else if (detectable.PointSpread is not null && figures.At95 is not null)
        {
            yield return $"The pace is too slow to be told from none within {DetectableChange.MostSessions} sessions.";
        }

        if (detectable.SessionsForAFifth is { } fifth)
        {
            yield return $"A fall by a fifth from the first session to the last would show after {fifth} sessions in all: {fifth - figures.Count} more.";
        }
    }

    private static string Curve(LearningCurves curves) => curves.Named switch
    {
        CurveName.TooFew => $"Learning curve: not known, {LearningCurves.FewestSessions} sessions are needed, {LearningCurves.FewestSessions - curves.Count} more.",
        CurveName.Level => "Learning curve: none shows; a level describes the sessions as well.",
        CurveName.StraightLine => "Learning curve: no bend can be told from a straight line; where it will end is not known.",
        CurveName.CannotTell =>
            $"Learning curve: it bends, but exponential or power cannot be told (BIC {FigureWords.Number(curves.Exponential!.Criteria.Bayes)} and "
            + $"{FigureWords.Number(curves.Power!.Criteria.Bayes)}; a difference above {FigureWords.Number(InformationCriteria.Clearly)} would tell).",
        CurveName.Exponential =>
            $"Learning curve: exponential, towards {Asymptote(curves.Exponential!, curves.Count)}; "
            + $"half of what is left is gained every {FigureWords.Number(curves.SessionsToHalve)} sessions.",
        CurveName.Power => $"Learning curve: power, towards {Asymptote(curves.Power!, curves.Count)}; each further gain takes longer.",
        _ => throw new ArgumentOutOfRangeException(nameof(curves)),
    };

    private static string Asymptote(FittedCurve curve, int count)
    {
        if (curve.AsymptoteHeld || curve.AsymptoteError is not { } error)
        {
            return "a level that is not known";
        }

        var reach = error * new StudentT(count - 3).Quantile(0.975);
        return $"{FigureWords.Number(curve.Asymptote)} (95 %: {FigureWords.Number(curve.Asymptote - reach)} to {FigureWords.Number(curve.Asymptote + reach)})";
    }

    private static IEnumerable<string> Prompts(TrendFigures figures, Func<double, string> nameOf, Func<double, string> valueOf)
    {
        if (figures.Shift is { Found: true } shift)
        {
            var line = shift.AgainstLine > InformationCriteria.Clearly ? "" : " A steady change describes the sessions as well.";
            yield return $"Worth a look: the level seems to shift after {nameOf(shift.LastBefore)}, from {valueOf(shift.MeanBefore)} to {valueOf(shift.MeanAfter)}. "
                + $"What changed then?{line}";
        }

        if (figures.Ewma is { IsOutside: true } || figures.Cusum is { IsOutside: true })
        {
            yield return $"Worth a look: the newest sessions have moved away from the first {EwmaChart.FewestOfBaseline} (running average or sums). A prompt, not a claim.";
        }
    }

    private static string Limits(TheilSen trend, Func<double, string> words) => trend is { Low: { } low, High: { } high }
        ? $" ({Percent(trend.Confidence)}: {words(low)} to {words(high)})" : " (no limits yet)";

    /// <summary>A change of a logarithm: "1.2 % less", "0.5 % more".</summary>
    private static string Share(double log)
    {
        var share = Math.Exp(log) - 1;
        return Math.Abs(share) < Unnoticed ? "unchanged" : (Math.Abs(share) * 100).ToString("0.0", CultureInfo.InvariantCulture) + (share < 0 ? " % less" : " % more");
    }

    /// <summary>"0.013 boards to the left", "none".</summary>
    private static string Moves(double boards, Hand hand) => Math.Abs(boards) < Unnoticed ? "none"
        : $"{Math.Abs(boards).ToString("0.000", CultureInfo.InvariantCulture)} boards to the {(boards > 0 == (hand == Hand.Right) ? "left" : "right")}";

    private static string Percent(double confidence) => (confidence * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";

    private static string Range(TrendLimits logs) => $"{FigureWords.TwoPlaces(Math.Exp(logs.Low))} to {FigureWords.TwoPlaces(Math.Exp(logs.High))}";

    private static string Boards(double boards) => $"{FigureWords.TwoPlaces(boards)} boards";

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
