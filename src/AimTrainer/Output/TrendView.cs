using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>A bowler's trends for a person, and as JSON for machines.</summary>
internal static class TrendView
{
    private const int NewestShown = 12;

    /// <summary>Prints the trends of a bowler.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="practice">The practice.</param>
    /// <param name="record">Its tests.</param>
    /// <param name="period">Whether the user chose the period.</param>
    /// <param name="program">The program, when there is one.</param>
    public static void Print(UserConsole console, BowlerPractice practice, TestRecord record, bool period, ProgramView? program)
    {
        var output = console.Out;
        output.WriteLine($"{practice.Bowler}, {Words.Of(practice.Hand)} hand: {Heading(practice, record)}");
        foreach (var note in Notes(practice, record, period))
        {
            output.WriteLine(note);
        }

        foreach (var series in record.Series)
        {
            output.WriteLine();
            output.WriteLine($"Tests {series.Place}: {Words.Count(series.Points.Count, "session")} with at least {TestSeries.FewestShots} test shots{LeftOut(series)}");
            if (series.Points.Count > 0)
            {
                Consoles.Write(Consoles.For(console), Table(series, practice.Hand));
                foreach (var line in Lines(series, record, practice.Hand))
                {
                    output.WriteLine($"- {line}");
                }
            }

            output.WriteLine($"- {TrendWords.Retention(series.Retention)}");
        }

        if (program is not null)
        {
            output.WriteLine();
            foreach (var line in TrendWords.Program(program))
            {
                output.WriteLine(line);
            }

            output.WriteLine($"Take care: {Cautions.Always[1]}");
        }
    }

    /// <summary>The same for machines, with every figure.</summary>
    /// <inheritdoc cref="Print"/>
    public static object Document(BowlerPractice practice, TestRecord record, bool period, ProgramView? program) => new
    {
        practice.Bowler,
        practice.Hand,
        practice.Simulated,
        Sessions = practice.Sessions.Count,
        Shots = practice.Sessions.Sum(session => session.Shots),
        Visits = record.Visits.Count,
        practice.OtherHandSessions,
        practice.CutOff,
        PeriodChosen = period,
        Series = record.Series.Select(series => new
        {
            Place = series.Place.ToString(),
            DistanceFeet = series.Place.Feet,
            Points = series.Points.Select(Point),
            TooFewShots = series.TooFewShots.Select(Point),
            Spread = Spread(series, record),
            Bias = Bias(series, record),
            Retention = new
            {
                Pairs = series.Retention.Pairs.Select(pair => new { pair.End.At, NextAt = pair.Start.At, pair.Days, pair.LogChange, pair.BiasChangeBoards }),
                series.Retention.MeanLogChange,
                series.Retention.LogChangeLimits,
                series.Retention.MeanBiasChangeBoards,
                series.Retention.BiasChangeLimits,
            },
        }),
        Program = program,
    };

    private static string Heading(BowlerPractice practice, TestRecord record)
    {
        var sessions = Words.Count(practice.Sessions.Count, "session");
        var span = practice.Sessions.Count == 0 ? ""
            : $", {TrendWords.Day(practice.Sessions[0].StartedAt)} to {TrendWords.Day(practice.Sessions[^1].StartedAt)} (UTC)";
        var joined = record.Visits.Count < practice.Sessions.Count && record.Visits.Count > 0
            ? $"; those within {PracticeVisit.Longest.TotalHours:0} hours count as one: {record.Visits.Count}" : "";
        return $"{sessions}{span}{joined}{(practice.Simulated ? " (simulated: every shot is invented)" : "")}";
    }

    private static IEnumerable<string> Notes(BowlerPractice practice, TestRecord record, bool period)
    {
        if (practice.OtherHandSessions > 0)
        {
            yield return $"{Words.Count(practice.OtherHandSessions, "session")} with the other hand left out: boards count from the other edge there.";
        }

        if (practice.CutOff)
        {
            yield return $"There is more than the newest {PracticeLimits.MostSessions} sessions or {PracticeLimits.MostBlocks} sums that are shown here; "
                + "choose a period with --from and --to.";
        }

        if (record.Series.Count == 0)
        {
            yield return "No test block yet. Trends are taken from test blocks only, since a training block's hit rate is what its sizing holds it at. "
                + "Begin each session with one (aimtrainer run --drill session-start-test).";
        }
        else if (period)
        {
            yield return "The period was chosen by hand. The limits hold for a period that was chosen before anybody looked; trying many finds an improvement by chance.";
        }

        if (record.Kinds > 1)
        {
            yield return $"{record.Kinds} kinds of test are looked at, so each has {100 * ImprovementRule.ConfidenceFor(record.Kinds):0.##} % limits: "
                + "together they are wrong no more often than one would be.";
        }
    }

    private static string LeftOut(TestSeries series) => series.TooFewShots.Count == 0 ? "."
        : $"; {Words.Count(series.TooFewShots.Count, "session")} with fewer ({series.TooFewShots.Min(point => point.Graded)} to "
            + $"{series.TooFewShots.Max(point => point.Graded)}) not used.";

    private static IEnumerable<string> Lines(TestSeries series, TestRecord record, Hand hand)
    {
        foreach (var line in TrendWords.Spread(Spread(series, record), session => $"the session of {TrendWords.Day(series.Points[(int)session - 1].At)}"))
        {
            yield return line;
        }

        yield return TrendWords.Bias(Bias(series, record), hand);
        if (series.Points.AsEnumerable().Count(point => point.TrainingBefore > 0) is > 0 and var after)
        {
            yield return $"In {after} of {series.Points.Count} sessions the test came after training shots: it then shows practice as well as what lasted.";
        }

        if (series.Points.AsEnumerable().Count(point => point.AtResolution) is > 0 and var coarse)
        {
            yield return $"In {Words.Count(coarse, "session")} the readings are too coarse for so small a spread; that of rounding alone is taken.";
        }
    }

    private static Table Table(TestSeries series, Hand hand)
    {
        var table = Consoles.Table(
            ("session", ColumnKind.Number), ("day (UTC)", ColumnKind.Name), ("shots", ColumnKind.Number), ("mean miss", ColumnKind.Name),
            ("spread, boards", ColumnKind.Number));
        var first = Math.Max(0, series.Points.Count - NewestShown);
        for (var i = first; i < series.Points.Count; i++)
        {
            var point = series.Points[i];
            table.AddRow($"{i + 1}", TrendWords.Day(point.At), $"{point.Graded}", Words.Miss(point.BiasBoards, hand), Words.TwoPlaces(point.SpreadBoards));
        }

        return table;
    }

    private static TrendFigures Spread(TestSeries series, TestRecord record) =>
        TrendFigures.Of(series.Spreads, TrendScale.Logarithm, record.Kinds, series.Freedom);

    private static TrendFigures Bias(TestSeries series, TestRecord record) => TrendFigures.Of(series.Biases, TrendScale.AsGiven, record.Kinds);

    private static object Point(TestPoint point) => new
    {
        Visit = point.Visit.Number,
        point.At,
        Shots = point.Graded,
        point.Targets,
        point.BiasBoards,
        point.VariableErrorBoards,
        point.SpreadBoards,
        point.LogSpread,
        point.AtResolution,
        point.TrainingBefore,
    };
}
