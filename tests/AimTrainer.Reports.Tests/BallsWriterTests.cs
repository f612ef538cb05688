using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using CsvHelper;
using CsvHelper.Configuration;
using UglyToad.PdfPig;

namespace AimTrainer.Reports.Tests;

public sealed partial class BallsWriterTests
{
    private static readonly Lazy<BallsReport> Full = new(() => MadeBalls.Evening().Report());

    /// <summary>Where pictures go; nothing is written when it is not set.</summary>
    private static string? PictureFolder => Environment.GetEnvironmentVariable("AIMTRAINER_PICTURES") is { Length: > 0 } folder ? folder : null;

    public static TheoryData<string> Made() => ["one ball", "one throw", "no ball", "all left out", "nothing measured", "few", "none", "simulated", "left", "bag", "wild", "full"];

    [Theory]
    [MemberData(nameof(Made))]
    public void Html_AnyComparison_IsOneFileWithoutOutsideAssets(string made)
    {
        var report = Of(made);
        var html = Text(report, ReportFormat.Html);

        Assert.StartsWith("<!DOCTYPE html>\n<html lang=\"en\">", html, StringComparison.Ordinal);
        Assert.DoesNotMatch(Outside(), html);
        Assert.All(Images().Matches(html), image => Assert.Matches("alt=\"[^\"]{10,}\"", image.Value));
        Assert.Equal(made == "simulated", html.Contains(BallsReport.SimulatedNotice, StringComparison.Ordinal));
        Assert.All(BallsReport.Cautions, caution => Assert.Contains(caution, html, StringComparison.Ordinal));
        Assert.Equal(report.Throws.Count, Regex.Count(html, "<td class=\"n\">"));
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>Blue", html, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Made))]
    public void Pdf_AnyComparison_EveryWordCanBeReadBackAndLiesOnItsPage(string made)
    {
        var report = Of(made);
        using var pdf = PdfDocument.Open(Bytes(report, ReportFormat.Pdf));
        var pages = pdf.GetPages().ToList();
        var words = string.Join(' ', pages.SelectMany(page => page.GetWords()).Select(word => word.Text)).Replace('\u00A0', ' ');

        Assert.All(pages, page => Assert.Equal((595, 842), ((int)page.Width, (int)page.Height)));
        Assert.All(pages.SelectMany(page => page.Letters), letter => Assert.InRange(letter.BoundingBox.Right, 0, 595));
        Assert.All(pages.SelectMany(page => page.Letters), letter => Assert.InRange(letter.BoundingBox.Bottom, 10, 842));
        string[] said = ["Balls compared", "The answer", "Where each ball fits", "Every throw", $"page {pages.Count} of {pages.Count}", "Wipe the ball between throws with a dry towel"];
        Assert.All(said, part => Assert.Contains(part, words, StringComparison.Ordinal));
        if (made != "wild")
        {
            var all = words.Split(' ').ToHashSet(StringComparer.Ordinal);
            Assert.All(BallsWords.Answer(report.Comparison).SelectMany(sentence => sentence.Split(' ')), word => Assert.Contains(word, all));
        }
    }

    [Theory]
    [InlineData("full")]
    [InlineData("bag")]
    [InlineData("wild")]
    public void Png_AnyComparison_IsTheSamePagesBelowEachOther(string made)
    {
        var png = Bytes(Of(made), ReportFormat.Png);
        using var pdf = PdfDocument.Open(Bytes(Of(made), ReportFormat.Pdf));
        using var bitmap = SkiaSharp.SKBitmap.Decode(png);
        Assert.Equal((1190, 1684 * Math.Min(8, pdf.NumberOfPages)), (bitmap.Width, bitmap.Height));
        for (var y = 0; y < bitmap.Height; y += 7)
        {
            Assert.Equal(SkiaSharp.SKColors.White, bitmap.GetPixel(20, y));
        }
    }

    [Theory]
    [MemberData(nameof(Made))]
    public void Csv_AnyComparison_ReadsBackAsItWasMeant(string made)
    {
        var report = Of(made);
        using var reader = new CsvReader(
            new StringReader(Text(report, ReportFormat.Csv)), new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n", Mode = CsvMode.RFC4180 });
        var rows = new List<string[]>();
        while (reader.Read())
        {
            rows.Add(reader.Parser.Record!);
        }

        Assert.Equal(CsvReport.Columns, rows[0]);
        Assert.All(rows, row => Assert.Equal(CsvReport.Columns.Count, row.Length));
        Assert.DoesNotContain(rows.Skip(1).SelectMany(row => row), cell =>
            cell.Length > 0 && "=+-@\t\r|%".Contains(cell[0], StringComparison.Ordinal) && !double.TryParse(cell, CultureInfo.InvariantCulture, out _));
        Assert.Equal(report.Throws.Count, rows.Count(row => row[0] == "throw"));
        Assert.Equal(report.Comparison.Lines.Sum(line => line.Measures.Count), rows.Count(row => row[0] == "difference"));
    }

    [Theory]
    [MemberData(nameof(Made))]
    public void Json_AnyComparison_KeysAreInTheDocs(string made)
    {
        var document = JsonDocument.Parse(Text(Of(made), ReportFormat.Json)).RootElement;
        var docs = File.ReadAllText(Path.Combine(Repository.Root, "docs", "comparison.md"));
        var keys = new HashSet<string>(StringComparer.Ordinal);
        Walk(document);
        Assert.All(keys, key => Assert.Contains($"`{key}`", docs, StringComparison.Ordinal));

        void Walk(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.Array)
            {
                Assert.All(element.EnumerateArray(), Walk);
            }
            else if (element.ValueKind == JsonValueKind.Object)
            {
                keys.UnionWith(element.EnumerateObject().Select(property => property.Name));
                Assert.All(element.EnumerateObject().Select(property => property.Value), Walk);
            }
        }
    }

    [Fact]
    public void Write_SameComparisonTwice_GivesTheSameBytes()
    {
        foreach (var format in Enum.GetValues<ReportFormat>())
        {
            Assert.Equal(Bytes(Full.Value, format), Bytes(Full.Value, format));
        }
    }

    [Fact]
    public void Write_UnknownFormat_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ReportWriter.Write(Full.Value, (ReportFormat)99, Stream.Null));

    [Fact]
    public void Inks_CopiedInGreys_AreStillToldApart()
    {
        // Source: WCAG 2.2, relative luminance of sRGB.
        double[] grey = [.. Enumerable.Range(0, 4).Select(i => Luminance(BallsInk.Of(i).Colour)).Order()];
        Assert.All(grey.Zip(grey.Skip(1)), pair => Assert.True(pair.Second - pair.First > 0.05, $"{pair}"));

        static double Luminance(ScottPlot.Color colour) => (0.2126 * Linear(colour.R)) + (0.7152 * Linear(colour.G)) + (0.0722 * Linear(colour.B));
        static double Linear(byte value) => value / 255.0 is var part && part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4);
    }

    [Theory]
    [InlineData("full", ReportFormat.Png, "balls-page.png")]
    [InlineData("bag", ReportFormat.Png, "balls-bag.png")]
    [InlineData("full", ReportFormat.Html, "balls.html")]
    [InlineData("left", ReportFormat.Html, "balls-left.html")]
    [InlineData("one ball", ReportFormat.Png, "balls-one.png")]
    public void Write_EveryPicture_IsNotEmpty(string made, ReportFormat format, string file)
    {
        var bytes = Bytes(Of(made), format);
        Assert.True(bytes.Length > 20_000, $"{bytes.Length}");
        if (PictureFolder is { } folder)
        {
            File.WriteAllBytes(Path.Combine(folder, file), bytes);
        }
    }

    private static BallsReport Of(string made) => made == "full" ? Full.Value : BallsReportTests.Of(made);

    private static byte[] Bytes(BallsReport report, ReportFormat format)
    {
        using var output = new MemoryStream();
        ReportWriter.Write(report, format, output);
        return output.ToArray();
    }

    private static string Text(BallsReport report, ReportFormat format) => Encoding.UTF8.GetString(Bytes(report, format));

    [GeneratedRegex("https?://|<script|<link|<iframe|@import|url\\(|src=\"(?!data:)|href=", RegexOptions.IgnoreCase)]
    private static partial Regex Outside();

    [GeneratedRegex("<img[^>]*>")]
    private static partial Regex Images();
}
