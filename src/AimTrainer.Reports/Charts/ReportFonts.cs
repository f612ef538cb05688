using ScottPlot;
using SkiaSharp;

namespace AimTrainer.Reports;

/// <summary>
/// The fonts that come with the program, so that a report looks the same on every machine. Liberation Sans has the widths of Arial and
/// Helvetica: a chart keeps its looks in a browser that lacks it. Letters it lacks are shown as boxes in PDF and PNG.
/// </summary>
internal static class ReportFonts
{
    /// <summary>The family's name.</summary>
    public const string Family = "Liberation Sans";

    static ReportFonts()
    {
        Regular = Load("LiberationSans-Regular.ttf");
        Bold = Load("LiberationSans-Bold.ttf");

        // The plotting library keeps its fonts for the whole process; ours is added once, under its own name, and changes nothing else.
        Fonts.FontResolvers.Add(new Resolver());
    }

    /// <summary>The regular face.</summary>
    public static SKTypeface Regular { get; }

    /// <summary>The bold face.</summary>
    public static SKTypeface Bold { get; }

    private static SKTypeface Load(string name)
    {
        using var stream = typeof(ReportFonts).Assembly.GetManifestResourceStream(name)!;
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data);
    }

    private sealed class Resolver : IFontResolver
    {
        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) => fontName == Family ? bold ? Bold : Regular : null;

        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            CreateTypeface(fontName, weight >= FontWeight.SemiBold, false);
    }
}
