using ScottPlot;
using SkiaSharp;

namespace AimTrainer.Reports;

/// <summary>
/// The fonts that come with the program, so that a report looks the same on every machine. Liberation Sans has the widths of Arial and
/// Helvetica: a chart keeps its looks in a browser that lacks it. Most reports need Latin letters only and get a trimmed font, which makes a PDF
/// far smaller; a text with other letters gets the whole one. Letters it lacks are shown as boxes in PDF and PNG.
/// </summary>
internal static class ReportFonts
{
    /// <summary>The family's name.</summary>
    public const string Family = "Liberation Sans";

    private static readonly (int First, int Last)[] Letters = [(0x20, 0x24F), (0x2010, 0x2026), (0x2032, 0x2033), (0x20AC, 0x20AC), (0x2212, 0x2212), (0x2260, 0x2265)];

    private static readonly (SKTypeface Whole, SKTypeface Latin) RegularFace = Load("LiberationSans-Regular.ttf"), BoldFace = Load("LiberationSans-Bold.ttf");

    // The plotting library keeps its fonts for the whole process; ours is added once, under its own name, and changes nothing else.
    static ReportFonts() => Fonts.FontResolvers.Add(new Resolver());

    /// <summary>The regular face for charts, whose words are the program's own.</summary>
    public static SKTypeface Regular => RegularFace.Latin;

    /// <summary>The bold face for charts.</summary>
    public static SKTypeface Bold => BoldFace.Latin;

    /// <summary>The face for a text: trimmed to Latin letters when it has no others.</summary>
    /// <param name="text">The text.</param>
    /// <param name="bold">Which face.</param>
    public static SKTypeface For(string text, bool bold)
    {
        var (whole, latin) = bold ? BoldFace : RegularFace;
        return text.EnumerateRunes().All(rune => Letters.Any(letters => rune.Value >= letters.First && rune.Value <= letters.Last)) ? latin : whole;
    }

    private static (SKTypeface Whole, SKTypeface Latin) Load(string name)
    {
        using var stream = typeof(ReportFonts).Assembly.GetManifestResourceStream(name)!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        var whole = Face(bytes.ToArray());
        using var font = new SKFont(whole);
        int[] letters = [.. Letters.SelectMany(range => Enumerable.Range(range.First, range.Last - range.First + 1))];
        var glyphs = letters.Select(letter => (int)font.GetGlyph(letter)).ToList();
        return (whole, Face(TrimmedFont.Of(bytes.ToArray(), glyphs)));
    }

    private static SKTypeface Face(byte[] bytes)
    {
        using var data = SKData.CreateCopy(bytes);
        return SKTypeface.FromData(data);
    }

    private sealed class Resolver : IFontResolver
    {
        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
            fontName == Family ? bold ? Bold : Regular : null;

        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            CreateTypeface(fontName, weight >= FontWeight.SemiBold, false);
    }
}
