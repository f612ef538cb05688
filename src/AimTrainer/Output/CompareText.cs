using System.Globalization;
using AimTrainer.Analysis;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>A comparison for the person at the terminal.</summary>
internal sealed class CompareText(UserConsole console)
{
    private readonly IAnsiConsole _console = Consoles.For(console);

    public void Print(string file, CompareInput input, ComparisonReport report)
    {
        Line($"{file}: {Words.Count(input.Throws.Count, "shot")}{(input.Bowler is null ? "" : $" of {input.Bowler}")}, held against {report.Reference}"
            + $"{(input.Repeated > 0 ? $"; {input.Repeated} repeated, taken once" : "")}{(input.OfOthers > 0 ? $"; {input.OfOthers} not of {input.Bowler} left out" : "")}"
            + $"{(input.Unreadable > 0 ? $"; {input.Unreadable} unreadable, see above" : "")}. Limits in brackets are 95 %.");
        foreach (var notice in report.Notices)
        {
            Line($"Note: {notice}.");
        }

        foreach (var line in report.Lines)
        {
            OnLine(line, report.Reference);
        }

        Overall(report);
        Places(report);
        Excluded(input, report);
    }

    private void OnLine(LineComparison line, string reference)
    {
        Heading($"{line.Ball} against {reference} on {line.Line}");
        Line(line.Sentence);
        Line($"{Words.Count(line.BallThrows, "good throw")} of {line.Ball}, {line.ReferenceThrows} of {reference}. "
            + $"Adjusted for: {(line.AdjustedFor.Count == 0 ? "nothing" : string.Join(", ", line.AdjustedFor))}"
            + $"{(line.Measures.Any(found => found.Adjusted?.Drift is not null) ? " and the drift of the lane" : "")}."
            + $"{(line.NotAdjustedFor.Count == 0 ? "" : $" Not adjusted for: {string.Join("; ", line.NotAdjustedFor)}.")}");
        if (line.Measures.Count > 0)
        {
            Differences(line, reference);
            Slopes(line);
        }

        foreach (var found in line.Measures.Where(found => found.Sentence.Length > 0))
        {
            Line($"- {found.Sentence}");
            if (found.SpreadHolmP < BallComparer.Alpha)
            {
                Line($"  {line.Ball} scatters {Words.TwoPlaces(found.Spread!.Ratio)} times as much here.");
            }

            if (found.Adjusted?.SlopesDifferP < 0.01)
            {
                Line("  What is adjusted for moves the two balls differently here: the difference holds for throws as these on average, not for others.");
            }
        }

        Line($"Not compared: {string.Join("; ", line.NotCompared)}.");
    }

    private void Differences(LineComparison line, string reference)
    {
        Line("");
        var table = Consoles.Table(
            ($"{line.Ball} less {reference}", ColumnKind.Name), ("throws", ColumnKind.Number), ("plain", ColumnKind.Number), ("adjusted", ColumnKind.Number),
            ("by ranks, adjusted", ColumnKind.Number), ("pairs", ColumnKind.Number), ("verdict", ColumnKind.Name));
        foreach (var found in line.Measures)
        {
            Row(
                table,
                $"{found.Measure.Name}, {Unit(found.Measure.Unit)}",
                string.Create(CultureInfo.InvariantCulture, $"{found.BallThrows} / {found.ReferenceThrows}"),
                Cell(found.Measure.Unit, found.Unadjusted.Difference),
                found.Adjusted is { } adjusted ? Cell(found.Measure.Unit, adjusted.Difference.Difference) : "-",
                Cell(found.Measure.Unit, found.HodgesLehmannAdjusted ?? found.HodgesLehmann),
                found.Paired is { } paired ? Cell(found.Measure.Unit, paired.Difference.Difference) : "-",
                ComparisonWords.Verdict(found.Verdict));
        }

        Consoles.Write(_console, table);
    }

    private void Slopes(LineComparison line)
    {
        var slopes = line.Measures.Where(found => found.Measure.Claimed && found.Adjusted is not null).ToList();
        if (slopes.Count == 0)
        {
            return;
        }

        Line("");
        var table = Consoles.Table(
            ("slopes", ColumnKind.Name), ("a degree of launch", ColumnKind.Number), ("a board of laydown", ColumnKind.Number), ("a mph", ColumnKind.Number),
            ("100 rpm", ColumnKind.Number), ("10 throws of drift", ColumnKind.Number));
        foreach (var found in slopes)
        {
            var unit = found.Measure.Unit;
            Row(
                table,
                $"{found.Measure.Name}, {Unit(unit)}",
                Slope("launchAngleDeg", 1),
                Slope("laydownBoard", 1),
                Slope("speedMph", 1),
                Slope("revsRpm", 100),
                found.Adjusted!.Drift is { } drift ? Cell(unit, drift.Times(10)) : "-");

            string Slope(string name, double times) =>
                found.Adjusted!.Slopes.FirstOrDefault(slope => slope.Name == name) is { } slope ? Cell(unit, slope.Slope.Times(times)) : "-";
        }

        Consoles.Write(_console, table);
        foreach (var not in slopes.SelectMany(found => found.Adjusted!.NotUsed).Distinct())
        {
            Line($"Not used: {not}.");
        }

        Line("");
    }

    private void Overall(ComparisonReport report)
    {
        if (report.Overall.Count == 0)
        {
            return;
        }

        Heading("Over all lines, each counting the same");
        foreach (var found in report.Overall)
        {
            Line($"- {found.Sentence}");
        }
    }

    private void Places(ComparisonReport report)
    {
        Heading("Where each ball belongs: as thrown, not adjusted; the one that turns first on top");
        var table = Consoles.Table(
            ("ball", ColumnKind.Name), ("line", ColumnKind.Name), ("throws", ColumnKind.Number), ("turns at, ft", ColumnKind.Number), ("on board", ColumnKind.Number),
            ("sharpness, degrees a foot", ColumnKind.Number), ("board at the pins", ColumnKind.Number), ("direction there, degrees", ColumnKind.Number));
        foreach (var ball in report.Balls)
        {
            Row(
                table, ball.Ball, ball.Line, ball.Throws.ToString(CultureInfo.InvariantCulture), Cell(MeasureUnit.Feet, ball.BreakpointFeet),
                Cell(MeasureUnit.Boards, ball.BreakpointBoard), Cell(MeasureUnit.DegreesPerFoot, ball.SharpnessDegreesPerFoot),
                Cell(MeasureUnit.Boards, ball.EntryBoard), Cell(MeasureUnit.Degrees, ball.EntryAngleDegrees));
        }

        Consoles.Write(_console, table);
    }

    private void Excluded(CompareInput input, ComparisonReport report)
    {
        if (report.Excluded.Count == 0)
        {
            return;
        }

        Heading("Left out");
        foreach (var one in report.Excluded)
        {
            Line($"{input.Where(one)}{(one.Ball is null ? "" : $", {one.Ball}")}: {one.Reason}{(one.Measure is null ? "" : " (left out of this measure only)")}");
        }
    }

    private static string Cell(MeasureUnit unit, BoundedEstimate estimate)
    {
        var format = unit == MeasureUnit.DegreesPerFoot ? "0.000" : "0.00";
        return estimate.Value is null ? "-" : estimate.Low is null ? Number(estimate.Value) : $"{Number(estimate.Value)} ({Number(estimate.Low)} to {Number(estimate.High)})";

        string Number(double? value) => (Math.Round(value!.Value, format.Length - 2) + 0.0).ToString(format, CultureInfo.InvariantCulture);
    }

    private static string Unit(MeasureUnit unit) => unit switch
    {
        MeasureUnit.Boards => "boards",
        MeasureUnit.Feet => "ft",
        MeasureUnit.Degrees => "degrees",
        MeasureUnit.DegreesPerFoot => "deg/ft",
        _ => "mph",
    };

    private static void Row(Table table, params ReadOnlySpan<string> cells)
    {
        var texts = new List<Text>();
        foreach (var cell in cells)
        {
            texts.Add(new Text(cell));
        }

        table.AddRow([.. texts]);
    }

    private void Heading(string text)
    {
        _console.WriteLine();
        _console.MarkupLine($"[bold]{Markup.Escape(text)}[/]");
    }

    private void Line(string text) => _console.WriteLine(text);
}
