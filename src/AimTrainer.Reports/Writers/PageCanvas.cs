using SkiaSharp;

namespace AimTrainer.Reports;

/// <summary>Puts text and boxes on a page. Points, from the upper left corner; every text is drawn as text.</summary>
internal sealed class PageCanvas(SKCanvas canvas)
{
    private const float Leading = 1.28f;

    /// <summary>What is drawn on.</summary>
    public SKCanvas Canvas => canvas;

    /// <summary>One line, cut off with three dots when it is too long; gives its width.</summary>
    public float Line(string text, float left, float baseline, float width, float size, bool bold = false, string colour = ReportColours.Ink, bool toTheRight = false)
    {
        var shown = Clean(text);
        using var font = Font(shown, size, bold);
        using var paint = Paint(colour);
        if (font.MeasureText(shown) > width)
        {
            while (shown.Length > 0 && font.MeasureText(shown + "...") > width)
            {
                shown = shown[..^(shown.Length > 1 && char.IsLowSurrogate(shown[^1]) ? 2 : 1)];
            }

            shown += "...";
        }

        canvas.DrawText(shown, toTheRight ? left + width : left, baseline, toTheRight ? SKTextAlign.Right : SKTextAlign.Left, font, paint);
        return font.MeasureText(shown);
    }

    /// <summary>A paragraph between two edges, of at most so many lines; gives the place below it.</summary>
    public float Paragraph(string text, float left, float top, float width, float size, bool bold = false, string colour = ReportColours.Ink, int most = int.MaxValue)
    {
        var clean = Clean(text);
        using var font = Font(clean, size, bold);
        using var paint = Paint(colour);
        var lines = Wrapped(clean, width, font);
        for (var i = 0; i < lines.Count && i < most; i++)
        {
            var line = i == most - 1 && lines.Count > most ? lines[i].TrimEnd('.', ' ') + "..." : lines[i];
            canvas.DrawText(line, left, top + size + (i * size * Leading), SKTextAlign.Left, font, paint);
        }

        return top + (Math.Min(lines.Count, most) * size * Leading);
    }

    /// <summary>How high a paragraph is.</summary>
    public static float HeightOf(string text, float width, float size, bool bold = false)
    {
        var clean = Clean(text);
        using var font = Font(clean, size, bold);
        return Wrapped(clean, width, font).Count * size * Leading;
    }

    /// <summary>A filled box, with a bar at its left edge when that has a colour.</summary>
    public void Box(float left, float top, float width, float height, string fill, string? bar = null)
    {
        using var paint = Paint(fill);
        canvas.DrawRect(left, top, width, height, paint);
        if (bar is not null)
        {
            using var edge = Paint(bar);
            canvas.DrawRect(left, top, 3, height, edge);
        }
    }

    /// <summary>A thin line across.</summary>
    public void Rule(float left, float y, float width)
    {
        using var paint = Paint(ReportColours.Rule);
        canvas.DrawRect(left, y, width, 0.75f, paint);
    }

    private static List<string> Wrapped(string text, float width, SKFont font)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            var longer = line.Length == 0 ? rest : $"{line} {rest}";
            if (font.MeasureText(longer) <= width)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            // A word that is wider than the column (a name without blanks) is cut.
            while (rest.Length > 1 && font.MeasureText(rest) > width)
            {
                var fits = Math.Max(1, font.BreakText(rest, width));
                lines.Add(rest[..fits]);
                rest = rest[fits..];
            }

            line = rest;
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    // A name may hold anything; a control letter has no picture.
    private static string Clean(string text) => string.Concat(ReportWords.Joined(text).Select(letter => char.IsControl(letter) ? ' ' : letter));

    private static SKFont Font(string text, float size, bool bold) =>
        new(ReportFonts.For(text, bold), size) { Subpixel = true, Edging = SKFontEdging.Antialias, Hinting = SKFontHinting.None };

    private static SKPaint Paint(string colour) => new() { Color = SKColor.Parse(colour), IsAntialias = true };
}
