using AimTrainer.Sessions;
using SkiaSharp;

namespace AimTrainer.Reports;

/// <summary>The report as one A4 page: PDF with real text and the fonts in it, or a picture.</summary>
internal static class PageReport
{
    /// <summary>Pixels a point of the picture.</summary>
    public const int PixelsAPoint = 2;

    /// <summary>A4 in points, as whole numbers.</summary>
    public const int Width = 595, Height = 842;

    private const float Margin = 34;
    private const float Across = Width - (2 * Margin);
    private const float Gap = 14;
    private const float LaneWidth = 212;
    private const float RightLeft = Margin + LaneWidth + Gap;
    private const float RightWidth = Across - LaneWidth - Gap;
    private const float Body = 9.8f;
    private const float Small = 7.6f;
    private const float ChartWidth = (Across - (2 * Gap)) / 3;
    private const float ChartHeight = 132;

    public static void WritePdf(BowlerReport report, Stream output)
    {
        var made = report.Made.UtcDateTime;
        using var document = SKDocument.CreatePdf(output, new SKDocumentPdfMetadata
        {
            Title = $"Practice report: {report.Bowler}",
            Subject = "What was worked on, where the shots went, why, and what to work on next",
            Creator = "aimtrainer",
            Producer = "aimtrainer",
            Creation = made,
            Modified = made,
        });
        Draw(document.BeginPage(Width, Height), report);
        document.EndPage();
        document.Close();
    }

    public static void WritePng(BowlerReport report, Stream output)
    {
        using var bitmap = new SKBitmap(Width * PixelsAPoint, Height * PixelsAPoint);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Scale(PixelsAPoint);
            Draw(canvas, report);
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        data.SaveTo(output);
    }

    private static void Draw(SKCanvas canvas, BowlerReport report)
    {
        var page = new PageCanvas(canvas);
        var top = Header(page, report);
        var laneBottom = Lane(page, report, top);
        var rightBottom = Words(page, report, top);
        var charts = Math.Max(laneBottom, rightBottom) + 8;
        var below = Charts(page, report, charts);
        Foot(page, report, below + 6);
    }

    private static float Header(PageCanvas page, BowlerReport report)
    {
        var y = Margin;
        page.Line(report.Bowler, Margin, y + 16, Across - 170, 20, bold: true);
        page.Line("Practice report", Margin, y + 16, Across, 12, colour: ReportColours.Quiet, toTheRight: true);
        page.Line(
            $"{ReportWords.Period(report)}, {ReportWords.Of(report.Hand)} hand", Margin, y + 31, Across - 150, Body, colour: ReportColours.Quiet);
        page.Line($"made {ReportWords.Day(report.Made)} (UTC)", Margin, y + 31, Across, Body, colour: ReportColours.Quiet, toTheRight: true);
        y += 38;
        page.Rule(Margin, y, Across);
        y += 6;
        if (report.Simulated)
        {
            page.Box(Margin, y, Across, 19, ReportColours.Ink);
            page.Line(BowlerReport.SimulatedNotice, Margin + 8, y + 13, Across - 16, Body, bold: true, colour: "#ffffff");
            y += 25;
        }

        if (Nothing(report) is { } nothing)
        {
            page.Box(Margin, y, Across, 19, ReportColours.Panel, ReportColours.Orange);
            page.Line(nothing, Margin + 11, y + 13, Across - 16, Body, bold: true);
            y += 25;
        }

        return y + 2;
    }

    /// <summary>What a report without any crossing lacks; null when there is one. What else is missing stands where it would have been.</summary>
    internal static string? Nothing(BowlerReport report) =>
        report.Lane.Main is not { Measured: > 0 } && report.Missing.Count > 0 ? $"Nothing to show yet. {report.Missing[0]}" : null;

    private static float Lane(PageCanvas page, BowlerReport report, float top)
    {
        const float height = 374;
        var chart = LaneChart.Of(report, (int)LaneWidth, (int)height);
        page.Line(chart.Title, Margin, top + 10, LaneWidth, 11, bold: true);
        chart.DrawOn(page.Canvas, Margin - 4, top + 14, LaneWidth + 4, height);
        return page.Paragraph(chart.Caption, Margin, top + 14 + height, LaneWidth, Small, colour: ReportColours.Quiet);
    }

    private static float Words(PageCanvas page, BowlerReport report, float top)
    {
        page.Line("What the record says", RightLeft, top + 10, RightWidth, 11, bold: true);
        var y = top + 18;
        foreach (var sentence in report.Sentences)
        {
            y = page.Paragraph(sentence.Text, RightLeft, y, RightWidth, Body, most: 5) + 5;
        }

        y = WorkOnBox(page, report.WorkOn, y + 3) + 12;
        page.Line("What was worked on", RightLeft, y + 8, RightWidth, 11, bold: true);
        y += 15;
        var work = report.Work;
        y = page.Paragraph(WorkSummary(work), RightLeft, y, RightWidth, Body, most: 2) + 2;
        foreach (var drill in work.Drills)
        {
            page.Line(drill.Name, RightLeft, y + Body, RightWidth - 110, Body);
            page.Line(DrillSummary(drill), RightLeft, y + Body, RightWidth, Body, colour: ReportColours.Quiet, toTheRight: true);
            y += Body * 1.35f;
        }

        if (work.MoreDrills > 0)
        {
            page.Line($"and {ReportWords.Count(work.MoreDrills, "more drill")}", RightLeft, y + Body, RightWidth, Body, colour: ReportColours.Quiet);
            y += Body * 1.35f;
        }

        return Targets(page, report, y + 8);
    }

    /// <summary>"12 sessions, 480 shots".</summary>
    internal static string WorkSummary(ReportWork work) =>
        $"{ReportWords.Count(work.Sessions, "session")}{(work.Visits > 0 && work.Visits < work.Sessions ? $" on {ReportWords.Count(work.Visits, "visit")}" : "")}, "
            + $"{ReportWords.Count(work.Shots, "shot")} that count.";

    /// <summary>"3 sessions, 45 shots".</summary>
    internal static string DrillSummary(DrillWork drill) => $"{ReportWords.Count(drill.Sessions, "session")}, {ReportWords.Count(drill.Shots, "shot")}";

    private static float WorkOnBox(PageCanvas page, WorkOn work, float top)
    {
        const float inner = RightWidth - 20;
        var drill = $"Drill: {work.DrillName} ({DrillShelf.CommandOf(work.DrillId)})";
        var height = 26 + PageCanvas.HeightOf(work.Text, inner, Body) + PageCanvas.HeightOf(drill, inner, Body, bold: true) + 8;
        page.Box(RightLeft, top, RightWidth, height, ReportColours.Panel, ReportColours.Orange);
        page.Line("Work on next", RightLeft + 11, top + 16, inner, 11, bold: true);
        var y = page.Paragraph(work.Text, RightLeft + 11, top + 22, inner, Body) + 3;
        page.Paragraph(drill, RightLeft + 11, y, inner, Body, bold: true);
        return top + height;
    }

    private static float Targets(PageCanvas page, BowlerReport report, float top)
    {
        var targets = LaneChart.Drawn(report);
        if (targets.Count == 0)
        {
            return top;
        }

        float[] columns = [0, 12, 88, 120, 228];
        page.Line("Targets", RightLeft, top + 8, RightWidth, 11, bold: true);
        var y = top + 14;
        string[] heads = ["", "board, place", "held", "mean miss (95 %)", "spread (95 %)"];
        Row(heads, ReportColours.Quiet, false);
        page.Rule(RightLeft, y - 1, RightWidth);
        for (var i = 0; i < targets.Count; i++)
        {
            var target = targets[i];
            Row(
                [
                    LaneChart.Letters[i].ToString(), $"{ReportWords.Short(target.CentreBoard)} {ReportWords.Place(target.DistanceFeet)}",
                    $"{target.Held}/{target.Measured}", ReportWords.LimitedSide(target.MeanMissBoards, report.Hand), ReportWords.Limited(target.SpreadBoards),
                ],
                ReportColours.Ink,
                true);
        }

        return page.Paragraph("Boards. Spread: standard deviation. Limits take the shots as independent.", RightLeft, y + 1, RightWidth, Small, colour: ReportColours.Quiet);

        void Row(string[] cells, string colour, bool letter)
        {
            for (var c = 0; c < cells.Length; c++)
            {
                var width = (c + 1 < columns.Length ? columns[c + 1] : RightWidth) - columns[c] - 2;
                page.Line(cells[c], RightLeft + columns[c], y + 8, width, Small, bold: letter && c == 0, colour: colour);
            }

            y += 11;
        }
    }

    private static float Charts(PageCanvas page, BowlerReport report, float top)
    {
        page.Rule(Margin, top - 4, Across);
        var bottom = top;
        ReportChart[] charts =
        [
            SplitChart.Of(report, (int)ChartWidth, (int)ChartHeight), TrendChart.Of(report, (int)ChartWidth, (int)ChartHeight),
            TenShotChart.Of(report, (int)ChartWidth, (int)ChartHeight),
        ];
        for (var i = 0; i < charts.Length; i++)
        {
            var left = Margin + (i * (ChartWidth + Gap));
            page.Line(charts[i].Title, left, top + 12, ChartWidth, 11, bold: true);
            var y = top + 17;
            if (charts[i].Fill is not null)
            {
                charts[i].DrawOn(page.Canvas, left - 4, y, ChartWidth + 4, ChartHeight);
                y += ChartHeight;
            }

            bottom = Math.Max(bottom, page.Paragraph(charts[i].Caption, left, y + 1, ChartWidth, Small, colour: ReportColours.Quiet, most: charts[i].Fill is null ? 8 : 6));
        }

        return bottom;
    }

    private static void Foot(PageCanvas page, BowlerReport report, float top)
    {
        const float bottom = Height - 24;
        page.Rule(Margin, top, Across);
        var y = top + 4;
        foreach (var line in Lines(report))
        {
            var height = PageCanvas.HeightOf(line, Across, Small);
            if (y + height > bottom)
            {
                break;
            }

            y = page.Paragraph(line, Margin, y, Across, Small, colour: ReportColours.Quiet) + 1;
        }
    }

    /// <summary>What stands at the foot, the most important first.</summary>
    internal static IEnumerable<string> Lines(BowlerReport report)
    {
        yield return $"Take care: {string.Join(" ", BowlerReport.Cautions)}";

        if (report.Notes.Count > 0)
        {
            yield return $"Notes: {string.Join(" ", report.Notes)}";
        }
    }
}
