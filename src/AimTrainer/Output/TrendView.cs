using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Reports;
using AimTrainer.Sessions;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>A bowler's trends for a person.</summary>
internal static class TrendView
{
    private const int NewestShown = 12;

    /// <summary>Prints the trends of a bowler.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="practice">The practice.</param>
    /// <param name="trend">Its trends.</param>
    public static void Print(UserConsole console, BowlerPractice practice, BowlerTrend trend)
    {
        var output = console.Out;
        output.WriteLine($"{practice.Bowler}, {Words.Of(practice.Hand)} hand: {TrendNotes.Heading(practice, trend)}");
        foreach (var note in TrendNotes.Of(practice, trend))
        {
            output.WriteLine(note);
        }

        foreach (var series in trend.Series)
        {
            output.WriteLine();
            output.WriteLine($"Tests {series.Place}: {Words.Count(series.Points.Count, "session")} with at least {TestSeries.FewestShots} test shots{TrendNotes.LeftOut(series)}");
            if (series.Points.Count > 0)
            {
                Consoles.Write(Consoles.For(console), Table(series, practice.Hand));
                foreach (var line in TrendNotes.Lines(series, practice.Hand))
                {
                    output.WriteLine($"- {line}");
                }
            }

            output.WriteLine($"- {TrendWords.Retention(series.Retention)}");
        }

        if (trend.Program is { } program)
        {
            output.WriteLine();
            foreach (var line in TrendWords.Program(program))
            {
                output.WriteLine(line);
            }

            output.WriteLine($"Take care: {Cautions.Always[1]}");
        }
    }

    private static Table Table(TrendSeriesFigures series, Hand hand)
    {
        var table = Consoles.Table(
            ("session", ColumnKind.Number), ("day (UTC)", ColumnKind.Name), ("shots", ColumnKind.Number), ("mean miss", ColumnKind.Name),
            ("spread, boards", ColumnKind.Number));
        var first = Math.Max(0, series.Points.Count - NewestShown);
        for (var i = first; i < series.Points.Count; i++)
        {
            var point = series.Points[i];
            table.AddRow($"{i + 1}", TrendWords.Day(point.At), $"{point.Shots}", Words.Miss(point.BiasBoards, hand), Words.TwoPlaces(point.SpreadBoards));
        }

        return table;
    }
}
