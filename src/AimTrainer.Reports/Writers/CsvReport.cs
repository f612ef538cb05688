using System.Buffers;
using System.Globalization;
using System.Text;
using AimTrainer.Analysis;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>
/// The report as one table (RFC 4180): a row a figure, with its limits, unit and number of shots; and a row a crossing. Text that a table
/// program would take for a formula begins with an apostrophe.
/// </summary>
internal static class CsvReport
{
    private static readonly SearchValues<char> _special = SearchValues.Create(",;\t\"\r\n");

    /// <summary>The headings.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["section", "item", "figure", "unit", "value", "low", "high", "shots", "text"];

    public static void Write(BowlerReport report, Stream output)
    {
        using var writer = new StreamWriter(output, new UTF8Encoding(false), 1 << 14, leaveOpen: true) { NewLine = "\r\n" };
        writer.WriteLine(string.Join(',', Columns));
        foreach (var row in Rows(report))
        {
            writer.WriteLine(string.Join(',', row));
        }
    }

    /// <summary>A cell of text, guarded and quoted where needed.</summary>
    internal static string Text(string? text)
    {
        if (string.IsNullOrEmpty(text))
        {
            return "";
        }

        // Quoted also at what other spreadsheets cut at: the part behind a semicolon or a tab would be a cell, and may be a formula.
        var guarded = FormulaGuard.Guarded(text);
        return guarded.AsSpan().ContainsAny(_special) || guarded[0] == ' ' || guarded[^1] == ' '
            ? $"\"{guarded.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : guarded;
    }

    private static IEnumerable<string[]> Rows(BowlerReport report)
    {
        yield return Said("report", "", "bowler", report.Bowler);
        yield return Said("report", "", "hand", ReportWords.Of(report.Hand));
        yield return Said("report", "", "simulated", report.Simulated ? "yes" : "no");
        yield return Said("report", "", "made", Moment(report.Made));
        yield return Said("report", "", "lane", report.LaneName);
        var work = report.Work;
        yield return Row("work", "", "sessions", "", Number(work.Sessions), "", "", Number(work.Shots), "");
        foreach (var drill in work.Drills)
        {
            yield return Row("work", drill.Id, "sessions", "", Number(drill.Sessions), "", "", Number(drill.Shots), drill.Name);
        }

        for (var i = 0; i < report.Lane.Targets.Count; i++)
        {
            foreach (var row in OfTarget(report.Lane.Targets[i]))
            {
                yield return row;
            }
        }

        foreach (var row in OfCauses(report.Causes))
        {
            yield return row;
        }

        foreach (var point in report.Trend.Points)
        {
            var item = Number(point.Session);
            yield return Row(
                "trend", item, "spread", "boards", Number(point.SpreadBoards), Number(point.SpreadLowBoards), Number(point.SpreadHighBoards), Number(point.Shots),
                Moment(point.At));
            yield return Row("trend", item, "line", "boards", Number(point.TrendBoards), Number(point.TrendLowBoards), Number(point.TrendHighBoards), "", "");
        }

        foreach (var ten in report.TenShots.Sessions)
        {
            yield return Row("tenShots", report.TenShots.Target ?? "", "spread", "boards", Number(ten.SpreadBoards), "", "", "10", Moment(ten.At));
        }

        foreach (var band in report.TenShots.Bands)
        {
            yield return Row("tenShots", "published band", "upTo", "boards", Number(band.UpToBoards), "", "", "10", band.Words);
        }

        foreach (var sentence in report.Sentences)
        {
            yield return Figure("sentence", sentence.Topic.ToString(), "said", sentence.Unit, sentence.Figure, "", sentence.Text);
        }

        yield return Said("workOn", report.WorkOn.DrillId, report.WorkOn.Rule.ToString(), report.WorkOn.Text);
        foreach (var (section, lines) in new[] { ("missing", report.Missing), ("note", report.Notes), ("caution", BowlerReport.Cautions) })
        {
            foreach (var line in lines)
            {
                yield return Said(section, "", "", line);
            }
        }
    }

    private static IEnumerable<string[]> OfTarget(LaneTarget target)
    {
        var item = string.Create(CultureInfo.InvariantCulture, $"board {target.CentreBoard} at {target.DistanceFeet} ft");
        var shots = Number(target.Measured);
        yield return Row("target", item, "width", "boards", Number(target.WidthBoards), "", "", Number(target.Shots), target.Name);
        yield return Row("target", item, "held", "shots", Number(target.Held), "", "", shots, "");
        yield return Figure("target", item, "meanMiss", "boards", target.MeanMissBoards, shots, target.MeanMissBoards.Why);
        yield return Figure("target", item, "spread", "boards", target.SpreadBoards, shots, target.SpreadBoards.Why);
        yield return Row("target", item, "grossMisses", "shots", Number(target.GrossMisses), "", "", shots, "");
        if (target is { MeanMissWithoutGrossBoards: { } mean, SpreadWithoutGrossBoards: { } spread })
        {
            yield return Figure("target", item, "meanMissWithoutGross", "boards", mean, Number(target.Kept), mean.Why);
            yield return Figure("target", item, "spreadWithoutGross", "boards", spread, Number(target.Kept), spread.Why);
        }

        yield return Row("target", item, "ellipse", "board", "", Number(target.Ellipse.LowBoard), Number(target.Ellipse.HighBoard), shots, target.Ellipse.Why);
        foreach (var crossing in target.Crossings)
        {
            yield return Row("crossing", item, "board", "board", Number(crossing.Board), "", "", "1", $"{Moment(crossing.At)}{(crossing.Gross ? " gross miss" : "")}");
        }
    }

    private static IEnumerable<string[]> OfCauses(ReportCauses causes)
    {
        yield return Row("causes", causes.Line ?? "", "split", "shots", Number(causes.Split), "", "", Number(causes.Shots), causes.Why);
        yield return Row("causes", causes.Line ?? "", "grossSetAside", "shots", Number(causes.GrossSetAside), "", "", Number(causes.Shots), "");
        if (causes.Target is not { } target)
        {
            yield break;
        }

        var (item, shots) = (target.Target, Number(target.Shots));
        yield return Figure("causes", item, "laydown", "boards", target.LaydownBoards, shots, target.LaydownBoards.Why);
        yield return Figure("causes", item, "angle", "boards", target.AngleBoards, shots, target.AngleBoards.Why);
        yield return Figure("causes", item, "beyond", "boards", target.BeyondBoards, shots, target.BeyondBoards.Why);
        if (causes.Shares is { } shares)
        {
            yield return Figure("causes", item, "laydownShare", "share", shares.LaydownShare, shots, null);
            yield return Figure("causes", item, "angleShare", "share", shares.AngleShare, shots, null);
            yield return Figure("causes", item, "beyondShare", "share", shares.BeyondShare, shots, null);
        }
    }

    internal static string[] Figure(string section, string item, string figure, string unit, BoundedEstimate estimate, string shots, string? text) =>
        Row(section, item, figure, unit, Number(estimate.Value), Number(estimate.Low), Number(estimate.High), shots, text);

    internal static string[] Said(string section, string item, string figure, string text) => Row(section, item, figure, "", "", "", "", "", text);

    internal static string[] Row(string section, string item, string figure, string unit, string value, string low, string high, string shots, string? text) =>
        [Text(section), Text(item), Text(figure), Text(unit), value, low, high, shots, Text(text)];

    // Numbers are the program's own: a minus there is a number's.
    internal static string Number(double? value) => value is { } known ? (Math.Round(known, 6) + 0.0).ToString("0.######", CultureInfo.InvariantCulture) : "";

    internal static string Moment(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
}
