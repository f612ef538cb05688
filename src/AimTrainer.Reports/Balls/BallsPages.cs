using System.Globalization;
using SkiaSharp;

namespace AimTrainer.Reports;

/// <summary>A comparison on A4 pages: PDF with real text and the fonts in it, or all pages as one picture below each other.</summary>
internal static class BallsPages
{
    /// <summary>More throws than these are not listed on paper.</summary>
    public const int MostThrows = 300;

    // A picture of more pages than these is no longer one that anybody looks at.
    private const int MostPictured = 8;
    private const float Margin = 34;
    private const float Across = PageReport.Width - (2 * Margin);
    private const float Bottom = PageReport.Height - 30;
    private const float Gap = 16;
    private const float Body = 9.8f;
    private const float Small = 7.8f;
    private const float FitsWidth = Across - 236 - Gap;
    private const float FitsSize = 8.6f;

    // Words beside the picture up to this height; more of them go below it, where they may break over pages.
    private const float MostBeside = 320;

    public static void WritePdf(BallsReport report, Stream output)
    {
        var made = report.Made.UtcDateTime;
        using var document = SKDocument.CreatePdf(output, new SKDocumentPdfMetadata
        {
            Title = Title(report),
            Subject = "Differences of balls on the same lines, with limits",
            Creator = "aimtrainer",
            Producer = "aimtrainer",
            Creation = made,
            Modified = made,
        });
        foreach (var page in Pages(report))
        {
            Draw(page, document.BeginPage(PageReport.Width, PageReport.Height));
            document.EndPage();
        }

        document.Close();
    }

    public static void WritePng(BallsReport report, Stream output)
    {
        var pages = Pages(report).Take(MostPictured).ToList();
        using var bitmap = new SKBitmap(PageReport.Width * PageReport.PixelsAPoint, pages.Count * PageReport.Height * PageReport.PixelsAPoint);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Scale(PageReport.PixelsAPoint);
            foreach (var page in pages)
            {
                Draw(page, canvas);
                canvas.Translate(0, PageReport.Height);
            }
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        data.SaveTo(output);
    }

    /// <summary>"Balls compared: Ann Lee".</summary>
    public static string Title(BallsReport report) => report.Bowler is { } bowler ? $"Balls compared: {bowler}" : "Balls compared";

    /// <summary>Whose, when, against which ball.</summary>
    public static string Subtitle(BallsReport report)
    {
        var days = report.Throws.AsEnumerable().Select(one => one.At).OfType<DateTimeOffset>().Select(ReportWords.Day).Order(StringComparer.Ordinal).ToList();
        var when = days.Count == 0 ? report.File ?? "no throw" : days[0] == days[^1] ? days[0] : $"{days[0]} to {days[^1]}";
        var others = report.Balls.Skip(1).ToList();
        var what = report.Comparison.Reference.Length == 0 || others.Count == 0 ? "" : $", {string.Join(", ", others)} against {report.Comparison.Reference}";
        return $"{when}, {ReportWords.Of(report.Hand)} hand{what}";
    }

    private static void Draw(List<(float Top, Piece Piece)> pieces, SKCanvas canvas)
    {
        var page = new PageCanvas(canvas);
        foreach (var (top, piece) in pieces)
        {
            piece.Draw(page, top);
        }
    }

    /// <summary>Puts the pieces on as few pages as they need; none is cut.</summary>
    private static List<List<(float Top, Piece Piece)>> Pages(BallsReport report)
    {
        var pages = new List<List<(float, Piece)>> { new() };
        var y = Margin;
        foreach (var piece in Pieces(report))
        {
            if (y + piece.Height + piece.KeepWith > Bottom && pages[^1].Count > 0)
            {
                pages.Add([]);
                y = Margin;
            }

            pages[^1].Add((y, piece));
            y += piece.Height;
        }

        for (var i = 0; i < pages.Count; i++)
        {
            var words = string.Create(CultureInfo.InvariantCulture, $"page {i + 1} of {pages.Count}, {Title(report)}");
            pages[i].Add((PageReport.Height - 24, new Piece(0, (page, top) => page.Line(words, Margin, top + 8, Across, Small, colour: ReportColours.Quiet, toTheRight: true))));
        }

        return pages;
    }

    private static IEnumerable<Piece> Pieces(BallsReport report)
    {
        yield return Header(report);
        yield return Heading("The answer");
        foreach (var sentence in BallsWords.Answer(report.Comparison))
        {
            yield return Text(sentence, 10.6f);
        }

        var more = BallsWords.More(report.Comparison).ToList();
        if (more.Count > 0)
        {
            yield return Heading("What would settle the rest");
            foreach (var sentence in more)
            {
                yield return Text(sentence, Body);
            }
        }

        for (var i = 0; i < report.Lines.Count; i++)
        {
            yield return Heading(BallsWords.LineTitle(report, i), rule: true, keepWith: 250);
            yield return Line(report, report.Lines[i]);
            foreach (var sentence in BallsWords.Sentences(report, report.Lines[i]))
            {
                yield return Text(sentence, 8.6f);
            }
        }

        yield return Heading("Where each ball fits", rule: true, keepWith: 150);
        var beside = report.Fits.AsEnumerable().Sum(fit => PageCanvas.HeightOf(fit, FitsWidth, FitsSize) + 4) < MostBeside;
        yield return Bag(report, beside);
        foreach (var fit in beside ? [] : report.Fits)
        {
            yield return Text(fit, FitsSize);
        }

        yield return Heading("Every throw", rule: true, keepWith: 40);
        yield return Text(BallsWords.Summary(report), Body);
        yield return Row(["", "ball", "line", "board@ft", "left out, and why"], ReportColours.Quiet);
        foreach (var one in report.Throws.AsEnumerable().Take(MostThrows))
        {
            yield return Row(
                [one.Number.ToString(CultureInfo.InvariantCulture), one.Ball ?? "not named", BallsWords.LetterOf(report, one), Compact(one), BallsWords.Reasons(one)],
                one.Counts ? ReportColours.Ink : ReportColours.Quiet);
        }

        if (report.Throws.Count > MostThrows)
        {
            yield return Text($"and {ReportWords.Count(report.Throws.Count - MostThrows, "more throw")}, which are in the other formats", Small, ReportColours.Quiet);
        }

        yield return new Piece(8, (page, top) => page.Rule(Margin, top + 3, Across));
        foreach (var line in BallsWords.Foot(report))
        {
            yield return Text(line, Small, ReportColours.Quiet);
        }
    }

    private static Piece Header(BallsReport report) => new(report.Simulated ? 71 : 46, (page, top) =>
    {
        page.Line(report.Bowler ?? "Balls compared", Margin, top + 16, Across - 170, 20, bold: true);
        page.Line("Balls compared", Margin, top + 16, Across, 12, colour: ReportColours.Quiet, toTheRight: true);
        page.Line(Subtitle(report), Margin, top + 31, Across - 110, Body, colour: ReportColours.Quiet);
        page.Line($"made {ReportWords.Day(report.Made)} (UTC)", Margin, top + 31, Across, Body, colour: ReportColours.Quiet, toTheRight: true);
        page.Rule(Margin, top + 38, Across);
        if (report.Simulated)
        {
            page.Box(Margin, top + 44, Across, 19, ReportColours.Ink);
            page.Line(BallsReport.SimulatedNotice, Margin + 8, top + 57, Across - 16, Body, bold: true, colour: "#ffffff");
        }
    });

    private static Piece Heading(string text, bool rule = false, float keepWith = 30)
    {
        var height = PageCanvas.HeightOf(text, Across, 11, bold: true);
        return new Piece(height + 10, (page, top) =>
        {
            if (rule)
            {
                page.Rule(Margin, top + 3, Across);
            }

            page.Paragraph(text, Margin, top + 6, Across, 11, bold: true);
        }, keepWith);
    }

    private static Piece Text(string text, float size, string colour = ReportColours.Ink) =>
        new(PageCanvas.HeightOf(text, Across, size) + 3, (page, top) => page.Paragraph(text, Margin, top, Across, size, colour: colour));

    /// <summary>The paths at the left, the differences beside them.</summary>
    private static Piece Line(BallsReport report, string line)
    {
        const float pathWidth = 190, pathHeight = 232;
        const float right = Margin + pathWidth + Gap, rightWidth = Across - pathWidth - Gap;
        var forestHeight = 46 + (BallsForestChart.RowHeight * BallsForestChart.Rows(report, line).Count);
        var (path, forest) = (BallsPathChart.Of(report, line, (int)pathWidth, (int)pathHeight), BallsForestChart.Of(report, line, (int)rightWidth, forestHeight));
        var left = (path.Fill is null ? 0 : pathHeight) + PageCanvas.HeightOf(path.Caption, pathWidth, Small);
        var beside = 16 + (forest.Fill is null ? 0 : forestHeight) + PageCanvas.HeightOf(forest.Caption, rightWidth, Small);
        return new Piece(Math.Max(left, beside) + 6, (page, top) =>
        {
            var y = top;
            if (path.Fill is not null)
            {
                path.DrawOn(page.Canvas, Margin - 4, y, pathWidth + 4, pathHeight);
                y += pathHeight;
            }

            page.Paragraph(path.Caption, Margin, y, pathWidth, Small, colour: ReportColours.Quiet);
            page.Line(forest.Title, right, top + 9, rightWidth, Body, bold: true);
            y = top + 16;
            if (forest.Fill is not null)
            {
                forest.DrawOn(page.Canvas, right - 4, y, rightWidth + 4, forestHeight);
                y += forestHeight;
            }

            page.Paragraph(forest.Caption, right, y, rightWidth, Small, colour: ReportColours.Quiet);
        });
    }

    private static Piece Bag(BallsReport report, bool words)
    {
        const float chartWidth = 236, chartHeight = 168;
        const float right = Margin + chartWidth + Gap;
        var fits = words ? report.Fits : [];
        var chart = BallsBagChart.Of(report, (int)chartWidth, (int)chartHeight);
        var left = (chart.Fill is null ? 0 : chartHeight) + PageCanvas.HeightOf(chart.Caption, chartWidth, Small);
        var beside = fits.AsEnumerable().Sum(fit => PageCanvas.HeightOf(fit, FitsWidth, FitsSize) + 4);
        return new Piece(Math.Max(left, beside) + 6, (page, top) =>
        {
            var y = top;
            if (chart.Fill is not null)
            {
                chart.DrawOn(page.Canvas, Margin - 4, y, chartWidth + 4, chartHeight);
                y += chartHeight;
            }

            page.Paragraph(chart.Caption, Margin, y, chartWidth, Small, colour: ReportColours.Quiet);
            y = top;
            foreach (var fit in fits)
            {
                y = page.Paragraph(fit, right, y, FitsWidth, FitsSize) + 4;
            }
        });
    }

    /// <summary>"21.1@0 16.3@15".</summary>
    private static string Compact(BallsThrow one) => one.Places.Count == 0 ? "not measured"
        : string.Join(' ', one.Places.AsEnumerable().Select(place => $"{ReportWords.One(place.Board)}@{Math.Round(place.Feet, 1).ToString(CultureInfo.InvariantCulture)}"));

    private static Piece Row(string[] cells, string colour)
    {
        float[] columns = [0, 22, 96, 116, 356];
        var reason = PageCanvas.HeightOf(cells[^1], Across - columns[^1], Small);
        return new Piece(Math.Max(10.5f, reason + 1), (page, top) =>
        {
            for (var i = 0; i < cells.Length - 1; i++)
            {
                page.Line(cells[i], Margin + columns[i], top + 8, columns[i + 1] - columns[i] - 4, Small, colour: colour);
            }

            page.Paragraph(cells[^1], Margin + columns[^1], top, Across - columns[^1], Small, colour: colour);
        });
    }

    /// <summary>Something that is drawn whole on one page.</summary>
    /// <param name="Height">Points.</param>
    /// <param name="Draw">Draws it from its top.</param>
    /// <param name="KeepWith">So much of what follows must fit on the same page.</param>
    private sealed record Piece(float Height, Action<PageCanvas, float> Draw, float KeepWith = 0);
}
