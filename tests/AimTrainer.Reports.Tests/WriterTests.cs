using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using AimTrainer.Domain;
using CsvHelper;
using CsvHelper.Configuration;
using UglyToad.PdfPig;

namespace AimTrainer.Reports.Tests;

public sealed partial class WriterTests
{
    private static readonly Lazy<BowlerReport> Full = new(() => new MadeBowler("Ann Lée", Hand.Left).Weeks(9, _ => 1.4, 0.8).Report());

    public static TheoryData<string> Made() => ["none", "one", "two", "three", "nine", "same", "missing", "gutter", "simulated", "wild", "full"];

    [Theory]
    [MemberData(nameof(Made))]
    public void Html_AnyReport_IsOneFileWithoutOutsideAssets(string made)
    {
        var report = Of(made);
        var html = Text(report, ReportFormat.Html);

        Assert.StartsWith("<!DOCTYPE html>\n<html lang=\"en\">", html, StringComparison.Ordinal);
        Assert.DoesNotMatch(Outside(), html);
        Assert.All(["<h1>", "<main>", "<title>", "<meta charset=\"utf-8\">"], part => Assert.Contains(part, html, StringComparison.Ordinal));
        Assert.All(Images().Matches(html), image => Assert.Matches("alt=\"[^\"]{10,}\"", image.Value));
        Balanced(html);
        foreach (Match svg in Svgs().Matches(html))
        {
            var root = XDocument.Parse(Encoding.UTF8.GetString(Convert.FromBase64String(svg.Groups[1].Value))).Root!;
            Assert.Equal("svg", root.Name.LocalName);
            Assert.NotNull(root.Attribute("viewBox"));
            Assert.Contains(root.Descendants(), element => element.Name.LocalName == "text" && element.Value.Trim().Length > 0);
            Assert.DoesNotContain(root.Descendants(), element => element.Name.LocalName is "script" or "image" or "foreignObject");
        }

        Assert.Equal(made == "simulated", html.Contains(BowlerReport.SimulatedNotice, StringComparison.Ordinal));
        Assert.All(BowlerReport.Cautions, caution => Assert.Contains(caution, html, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Made))]
    public void Pdf_AnyReport_IsOnePageWhoseWordsCanBeReadBack(string made)
    {
        var report = Of(made);
        using var pdf = PdfDocument.Open(Bytes(report, ReportFormat.Pdf));
        var page = Assert.Single(pdf.GetPages());
        var words = string.Join(' ', page.GetWords().Select(word => word.Text)).Replace('\u00A0', ' ');

        Assert.Equal((595, 842), ((int)page.Width, (int)page.Height));
        Assert.Equal($"Practice report: {report.Bowler}", pdf.Information.Title);
        string[] said = ["Practice report", "What the record says", "Work on next", "What was worked on", "The lane", "Stop when the hand, wrist or arm hurts"];
        Assert.All(said, part => Assert.Contains(part, words, StringComparison.Ordinal));
        Assert.Contains(report.WorkOn.DrillName, words, StringComparison.Ordinal);
        Assert.Equal(made == "simulated", words.Contains("Simulated: every shot in this report is invented.", StringComparison.Ordinal));

        // Words lie beside each other in columns; each sentence is found word by word.
        var all = words.Split(' ').ToHashSet(StringComparer.Ordinal);
        Assert.All(report.Sentences.SelectMany(sentence => sentence.Text.Split(' ')), word => Assert.Contains(word, all));
        Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Right, 0, 595));
        Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Bottom, 20, 842));
    }

    [Fact]
    public void Pdf_AnyReport_HasItsFontInIt()
    {
        using var pdf = PdfDocument.Open(Bytes(Full.Value, ReportFormat.Pdf));
        var fonts = pdf.GetPage(1).Letters.Select(letter => letter.FontName).Distinct().ToList();
        Assert.All(fonts, font => Assert.Contains("LiberationSans", font, StringComparison.Ordinal));
        Assert.Contains("Ann Lée", string.Join(' ', pdf.GetPage(1).GetWords().Select(word => word.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void Pdf_LatinLettersOnly_IsSmallAndOthersAreStillWritten()
    {
        // With both whole faces in it a page took 0.4 MB more than its drawing.
        Assert.InRange(Bytes(Full.Value, ReportFormat.Pdf).Length, 1_000, 300_000);
        using var pdf = PdfDocument.Open(Bytes(new MadeBowler("Ελένη Čapek Ж").AtTheArrows(10).Report(), ReportFormat.Pdf));
        Assert.Contains("Ελένη Čapek Ж", string.Join(' ', pdf.GetPage(1).GetWords().Select(word => word.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void TrimmedFont_LettersThatStay_LookTheSame()
    {
        using var stream = typeof(ReportFonts).Assembly.GetManifestResourceStream("LiberationSans-Regular.ttf")!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        using var whole = SkiaSharp.SKTypeface.FromData(SkiaSharp.SKData.CreateCopy(bytes.ToArray()));
        using var wholeFont = new SkiaSharp.SKFont(whole, 40);
        using var trimmed = SkiaSharp.SKTypeface.FromData(SkiaSharp.SKData.CreateCopy(TrimmedFont.Of(bytes.ToArray(), "aé".Select(letter => (int)wholeFont.GetGlyph(letter)))));
        using var trimmedFont = new SkiaSharp.SKFont(trimmed, 40);
        foreach (var letter in "aé")
        {
            using var path = wholeFont.GetGlyphPath(wholeFont.GetGlyph(letter));
            using var same = trimmedFont.GetGlyphPath(trimmedFont.GetGlyph(letter));
            Assert.Equal(path.ToSvgPathData(), same.ToSvgPathData());
            Assert.Equal(wholeFont.MeasureText($"{letter}"), trimmedFont.MeasureText($"{letter}"));
        }

        using var gone = trimmedFont.GetGlyphPath(trimmedFont.GetGlyph('b'));
        Assert.True(gone is null || gone.IsEmpty);
        Assert.Throws<ArgumentException>(() => TrimmedFont.Of([0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0], []));
    }

    [Theory]
    [InlineData("none")]
    [InlineData("wild")]
    [InlineData("full")]
    public void Png_AnyReport_HasTwoPixelsAPoint(string made)
    {
        var png = Bytes(Of(made), ReportFormat.Png);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], png[..4]);
        Assert.Equal((1190, 1684), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
        using var bitmap = SkiaSharp.SKBitmap.Decode(png);

        // The heading's zone has ink, the outer margin none: nothing cleared the page, nothing ran over.
        Assert.Contains(Pixels(bitmap, 68, 1122, 68, 110), pixel => pixel.Red < 80);
        Assert.All(Pixels(bitmap, 0, 20, 0, 1684), pixel => Assert.Equal(SkiaSharp.SKColors.White, pixel));
    }

    [Theory]
    [MemberData(nameof(Made))]
    public void Csv_AnyReport_ReadsBackAsItWasMeant(string made)
    {
        var report = Of(made);
        var text = Text(report, ReportFormat.Csv);
        using var reader = new CsvReader(new StringReader(text), new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n", Mode = CsvMode.RFC4180 });
        var rows = new List<string[]>();
        while (reader.Read())
        {
            rows.Add(reader.Parser.Record!);
        }

        Assert.Equal(CsvReport.Columns, rows[0]);
        Assert.All(rows, row => Assert.Equal(CsvReport.Columns.Count, row.Length));
        Assert.DoesNotContain(rows.Skip(1).SelectMany(row => row), cell =>
            cell.Length > 0 && "=+-@\t\r|%".Contains(cell[0], StringComparison.Ordinal) && !double.TryParse(cell, CultureInfo.InvariantCulture, out _));
        Assert.Equal(report.Bowler, rows.Single(row => row[2] == "bowler")[8].TrimStart('\''));
        Assert.Equal(report.Sentences.Select(sentence => sentence.Text), rows.Where(row => row[0] == "sentence").Select(row => row[8]));
        var boards = report.Lane.Targets.AsEnumerable().SelectMany(target => target.Crossings.AsEnumerable().Select(crossing => crossing.Board));
        Assert.Equal(boards, rows.Where(row => row[0] == "crossing").Select(row => double.Parse(row[4], CultureInfo.InvariantCulture)));
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-x", "'-x")]
    [InlineData("@sum", "'@sum")]
    [InlineData(" =1", "\"' =1\"", false)]
    [InlineData("x;=1+1", "\"x;=1+1\"")]
    [InlineData("x\t=1+1", "\"x\t=1+1\"")]
    [InlineData("\uFF1D1", "'\uFF1D1")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("a\"b", "\"a\"\"b\"")]
    [InlineData("a\nb", "\"a\nb\"")]
    [InlineData("plain", "plain")]
    [InlineData("", "")]
    public void CsvText_Dangerous_IsGuardedAndQuoted(string text, string cell, bool quotedAsIs = true)
    {
        var found = CsvReport.Text(text);
        Assert.Equal(quotedAsIs ? cell : cell.Trim('"'), found);
    }

    [Theory]
    [MemberData(nameof(Made))]
    public void Json_AnyReport_KeysAreInTheDocsAndTheUnknownHasItsReason(string made)
    {
        var document = JsonDocument.Parse(Text(Of(made), ReportFormat.Json)).RootElement;
        var docs = File.ReadAllText(Path.Combine(Repository.Root, "docs", "reports.md"));
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
                if (element.TryGetProperty("why", out var why) && element.TryGetProperty("value", out var value))
                {
                    Assert.True(value.ValueKind != JsonValueKind.Null || why.ValueKind == JsonValueKind.String, element.ToString());
                }

                Assert.All(element.EnumerateObject().Select(property => property.Value), Walk);
            }
        }
    }

    [Fact]
    public void Write_SameReportTwice_GivesTheSameBytes()
    {
        foreach (var format in Enum.GetValues<ReportFormat>())
        {
            Assert.Equal(Bytes(Full.Value, format), Bytes(Full.Value, format));
        }
    }

    [Fact]
    public async Task Write_ManyAtOnce_AllComeOut()
    {
        var pages = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => Text(Full.Value, ReportFormat.Html))));
        Assert.Single(pages.Distinct());
    }

    [Fact]
    public void Write_UnknownFormat_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ReportWriter.Write(Full.Value, (ReportFormat)99, Stream.Null));

    private static BowlerReport Of(string made) => made switch
    {
        "none" => new MadeBowler().Report(),
        "one" => new MadeBowler().AtTheArrows(10.5).Report(),
        "two" => new MadeBowler().AtTheArrows(10.5, 9).Report(),
        "three" => new MadeBowler().AtTheArrows(10.5, 9, 11).Report(),
        "nine" => new MadeBowler().AtTheArrows(10.5, 9, 11, 10, 10, 10, 8, 12, 10).Report(),
        "same" => new MadeBowler().AtTheArrows([.. Enumerable.Repeat((double?)11, 20)]).Report(),
        "missing" => new MadeBowler().AtTheArrows([.. Enumerable.Repeat((double?)null, 20)]).Report(),
        "gutter" => new MadeBowler().AtTheArrows(-3.5, 44, 10).Report(),
        "simulated" => new MadeBowler(simulated: true).Weeks(3, _ => 1).Report(),
        "wild" => new MadeBowler("=cmd|' /C calc'!A0\"<script src=//x>\u0007" + new string('W', 150)) { OtherHand = 1, CutOff = true }.Weeks(9, _ => 1.4).Report(
            new Sessions.PracticeFilter("x", DateTimeOffset.UnixEpoch)),
        _ => Full.Value,
    };

    private static byte[] Bytes(BowlerReport report, ReportFormat format)
    {
        using var output = new MemoryStream();
        ReportWriter.Write(report, format, output);
        return output.ToArray();
    }

    private static string Text(BowlerReport report, ReportFormat format) => Encoding.UTF8.GetString(Bytes(report, format));

    private static IEnumerable<SkiaSharp.SKColor> Pixels(SkiaSharp.SKBitmap bitmap, int left, int right, int top, int bottom) =>
        from x in Enumerable.Range(left, right - left)
        from y in Enumerable.Range(top, bottom - top)
        select bitmap.GetPixel(x, y);

    /// <summary>Every element that is opened is closed, in order.</summary>
    private static void Balanced(string html)
    {
        string[] alone = ["meta", "img"];
        var open = new Stack<string>();
        foreach (Match tag in Tags().Matches(html))
        {
            var name = tag.Groups[2].Value;
            if (tag.Groups[1].Value == "/")
            {
                Assert.Equal(open.Pop(), name);
            }
            else if (!alone.Contains(name))
            {
                open.Push(name);
            }
        }

        Assert.Empty(open);
    }

    [GeneratedRegex("https?://|<script|<link|<iframe|@import|url\\(|src=\"(?!data:)|href=", RegexOptions.IgnoreCase)]
    private static partial Regex Outside();

    [GeneratedRegex("<img[^>]*>")]
    private static partial Regex Images();

    [GeneratedRegex("data:image/svg\\+xml;base64,([A-Za-z0-9+/=]+)")]
    private static partial Regex Svgs();

    [GeneratedRegex("<(/?)([a-z][a-z0-9]*)[^>]*>")]
    private static partial Regex Tags();
}
