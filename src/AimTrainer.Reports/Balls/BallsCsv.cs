using System.Globalization;
using System.Text;
using AimTrainer.Analysis;

namespace AimTrainer.Reports;

/// <summary>A comparison as one table (RFC 4180) with the columns of every report: a row a figure with its limits, a row a throw and reason.</summary>
internal static class BallsCsv
{
    public static void Write(BallsReport report, Stream output)
    {
        using var writer = new StreamWriter(output, new UTF8Encoding(false), 1 << 14, leaveOpen: true) { NewLine = "\r\n" };
        writer.WriteLine(string.Join(',', CsvReport.Columns));
        foreach (var row in Rows(report))
        {
            writer.WriteLine(string.Join(',', row));
        }
    }

    private static IEnumerable<string[]> Rows(BallsReport report)
    {
        var comparison = report.Comparison;
        yield return CsvReport.Said("report", "", "bowler", report.Bowler ?? "");
        yield return CsvReport.Said("report", "", "hand", ReportWords.Of(report.Hand));
        yield return CsvReport.Said("report", "", "simulated", report.Simulated ? "yes" : "no");
        yield return CsvReport.Said("report", "", "made", CsvReport.Moment(report.Made));
        yield return CsvReport.Said("report", "", "reference", comparison.Reference);
        yield return CsvReport.Said("report", "", "problem", comparison.Problem ?? "");
        foreach (var session in report.Sessions)
        {
            yield return CsvReport.Row("session", session.SessionId, "throws", "", Whole(session.Throws), "", "", "", $"{CsvReport.Moment(session.At)} {session.Drill}");
        }

        foreach (var line in comparison.Lines)
        {
            yield return CsvReport.Said("sentence", $"{line.Ball}, {line.Line}", "", line.Sentence);
            foreach (var found in line.Measures)
            {
                var shots = string.Create(CultureInfo.InvariantCulture, $"{found.BallThrows}+{found.ReferenceThrows}");
                yield return CsvReport.Figure(
                    "difference", $"{line.Ball}, {line.Line}", found.Measure.Name, ComparisonWords.Unit(found.Measure.Unit), found.Best.Difference, shots,
                    $"{ComparisonWords.Verdict(found.Verdict)}{(found.Sentence.Length > 0 ? ": " : "")}{found.Sentence}");
            }
        }

        foreach (var found in comparison.Overall)
        {
            yield return CsvReport.Figure(
                "overall", found.Ball, found.Measure.Name, ComparisonWords.Unit(found.Measure.Unit), found.Difference.Difference, "", found.Sentence);
        }

        foreach (var place in comparison.Balls)
        {
            var (item, shots) = ($"{place.Ball}, {place.Line}", Whole(place.Throws));
            yield return CsvReport.Figure("ball", item, "breakpointFeet", "ft", place.BreakpointFeet, shots, place.BreakpointFeet.Why);
            yield return CsvReport.Figure("ball", item, "breakpointBoard", "board", place.BreakpointBoard, shots, place.BreakpointBoard.Why);
            yield return CsvReport.Figure("ball", item, "sharpness", "degrees a foot", place.SharpnessDegreesPerFoot, shots, place.SharpnessDegreesPerFoot.Why);
            yield return CsvReport.Figure("ball", item, "entryBoard", "board", place.EntryBoard, shots, place.EntryBoard.Why);
            yield return CsvReport.Figure("ball", item, "entryAngle", "degrees", place.EntryAngleDegrees, shots, place.EntryAngleDegrees.Why);
        }

        foreach (var one in report.Throws)
        {
            var item = $"{Whole(one.Number)}, {one.Ball ?? "no ball named"}, {one.Line ?? "no line named"}";
            yield return CsvReport.Said("throw", item, one.Counts ? "counts" : "left out", BallsWords.Reasons(one));
            foreach (var place in one.Places)
            {
                yield return CsvReport.Row("place", item, CsvReport.Number(place.Feet) + " ft", "board", CsvReport.Number(place.Board), "", "", "1", "");
            }
        }

        foreach (var (section, lines) in new[] { ("fits", report.Fits), ("notice", comparison.Notices), ("note", report.Notes), ("caution", BallsReport.Cautions) })
        {
            foreach (var line in lines)
            {
                yield return CsvReport.Said(section, "", "", line);
            }
        }
    }

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
