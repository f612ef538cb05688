using System.Text.RegularExpressions;
using ScottPlot;
using SkiaSharp;

namespace AimTrainer.Reports;

/// <summary>One chart of a report: how wide and high it is meant to be, and how it is drawn.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Caption">What it shows, and what it does not.</param>
/// <param name="Alternative">The same for somebody who does not see it.</param>
/// <param name="Width">In points.</param>
/// <param name="Height">In points.</param>
/// <param name="Fill">Puts the data in an empty plot; null when there is nothing to draw.</param>
internal sealed partial record ReportChart(string Title, string Caption, string Alternative, int Width, int Height, Action<Plot>? Fill)
{
    private const float TickSize = 7.5f;
    private const float LabelSize = 8;
    private const float RoomAboveTopTick = 6;

    /// <summary>Draws it at a place of a page.</summary>
    public void DrawOn(SKCanvas canvas, float left, float top, float width, float height)
    {
        using var plot = Make();
        canvas.Save();
        canvas.Translate(left, top);

        // A plot clears what it is drawn on: all of the page, if it could.
        canvas.ClipRect(new SKRect(0, 0, width, height));
        plot.Render(canvas, new PixelRect(0, width, height, 0));
        canvas.Restore();
    }

    /// <summary>The chart as an SVG document.</summary>
    public string ToSvg()
    {
        using var plot = Make();
        var svg = plot.GetSvgXml(Width, Height);

        // The font of the same widths stands in where ours is not installed; the size goes, so that the page may scale it.
        svg = svg.Replace($"font-family=\"{ReportFonts.Family}\"", $"font-family=\"{ReportFonts.Family}, Arial, Helvetica, sans-serif\"", StringComparison.Ordinal);

        // Names inside are counted on through the whole process; the same report gives the same bytes.
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        svg = ClipName().Replace(svg, name =>
        {
            names.TryAdd(name.Value, $"clip{names.Count + 1}");
            return names[name.Value];
        });
        return Size().Replace(svg, $"viewBox=\"0 0 {Width} {Height}\"", 1);
    }

    [GeneratedRegex("width=\"[0-9.]+\" height=\"[0-9.]+\"")]
    private static partial Regex Size();

    [GeneratedRegex("cl_[0-9a-f]+")]
    private static partial Regex ClipName();

    private Plot Make()
    {
        var plot = new Plot();

        // The name by way of the face, so that the font is known to the library before the first chart.
        plot.Font.Set(ReportFonts.Regular.FamilyName);
        var ink = Color.FromHex(ReportColours.Ink);
        plot.FigureBackground.Color = Colors.White;
        plot.DataBackground.Color = Colors.White;
        plot.Axes.Color(ink);
        plot.Grid.MajorLineColor = Color.FromHex(ReportColours.Rule);
        plot.Grid.MajorLineWidth = 0.5f;
        plot.Axes.Top.FrameLineStyle.Width = 0;
        plot.Axes.Top.TickLabelStyle.IsVisible = false;
        plot.Axes.Top.MajorTickStyle.Length = 0;
        plot.Axes.Top.MinorTickStyle.Length = 0;
        plot.Axes.Top.MinimumSize = RoomAboveTopTick;
        plot.Axes.Top.MaximumSize = RoomAboveTopTick;
        plot.Axes.Right.IsVisible = false;
        foreach (var axis in new IAxis[] { plot.Axes.Bottom, plot.Axes.Left })
        {
            axis.TickLabelStyle.FontSize = TickSize;
            axis.MajorTickStyle.Length = 3;
            axis.MinorTickStyle.Length = 0;
            axis.FrameLineStyle.Width = 0.75f;
            axis.Label.FontSize = LabelSize;
            axis.Label.Bold = false;
        }

        Fill?.Invoke(plot);
        return plot;
    }
}
