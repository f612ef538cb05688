using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>What is said of a bowler's trends beside the figures: on the terminal and on the console's page.</summary>
public static class TrendNotes
{
    /// <summary>How much practice, and when.</summary>
    public static string Heading(BowlerPractice practice, BowlerTrend trend)
    {
        var sessions = FigureWords.Count(practice.Sessions.Count, "session");
        var span = practice.Sessions.Count == 0 ? ""
            : $", {TrendWords.Day(practice.Sessions[0].StartedAt)} to {TrendWords.Day(practice.Sessions[^1].StartedAt)} (UTC)";
        var joined = trend.Visits < practice.Sessions.Count && trend.Visits > 0
            ? $"; those within {PracticeVisit.Longest.TotalHours:0} hours count as one: {trend.Visits}" : "";
        return $"{sessions}{span}{joined}{(practice.Simulated ? " (simulated: every shot is invented)" : "")}";
    }

    /// <summary>What was left out, and what to take care of.</summary>
    public static IEnumerable<string> Of(BowlerPractice practice, BowlerTrend trend)
    {
        if (practice.OtherHandSessions > 0)
        {
            yield return $"{FigureWords.Count(practice.OtherHandSessions, "session")} with the other hand left out: boards count from the other edge there.";
        }

        if (practice.CutOff)
        {
            yield return $"There is more than the newest {PracticeLimits.MostSessions} sessions or {PracticeLimits.MostBlocks} sums that are shown here; "
                + "choose a period with --from and --to.";
        }

        if (trend.Series.Count == 0)
        {
            yield return "No test block yet. Trends are taken from test blocks only, since a training block's hit rate is what its sizing holds it at. "
                + $"Begin each session with one ({DrillShelf.CommandOf("session-start-test")}).";
        }
        else if (trend.PeriodChosen)
        {
            yield return "The period was chosen by hand. The limits hold for a period that was chosen before anybody looked; trying many finds an improvement by chance.";
        }

        if (Kinds(trend) > 1)
        {
            yield return $"{Kinds(trend)} kinds of test are looked at, so each has {100 * ImprovementRule.ConfidenceFor(Kinds(trend)):0.##} % limits: "
                + "together they are wrong no more often than one would be.";
        }
    }

    /// <summary>How many tests had too few shots.</summary>
    public static string LeftOut(TrendSeriesFigures series) => series.TooFewShots.Count == 0 ? "."
        : $"; {FigureWords.Count(series.TooFewShots.Count, "session")} with fewer ({series.TooFewShots.Min(point => point.Shots)} to "
            + $"{series.TooFewShots.Max(point => point.Shots)}) not used.";

    /// <summary>Everything about the tests at one place, in sentences.</summary>
    public static IEnumerable<string> Lines(TrendSeriesFigures series, Hand hand)
    {
        foreach (var line in TrendWords.Spread(series.Spread, session => $"the session of {TrendWords.Day(series.Points[(int)session - 1].At)}"))
        {
            yield return line;
        }

        yield return TrendWords.Bias(series.Bias, hand);
        if (series.Points.AsEnumerable().Count(point => point.TrainingBefore > 0) is > 0 and var after)
        {
            yield return $"In {after} of {series.Points.Count} sessions the test came after training shots: it then shows practice as well as what lasted.";
        }

        if (series.Points.AsEnumerable().Count(point => point.AtResolution) is > 0 and var coarse)
        {
            yield return $"In {FigureWords.Count(coarse, "session")} the readings are too coarse for so small a spread; that of rounding alone is taken.";
        }
    }

    private static int Kinds(BowlerTrend trend) => TestRecord.KindsOf(trend.Series.Select(series => series.Points.Count));
}
