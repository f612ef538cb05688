using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>The cautions at the lower end of a column, behind a bar.</summary>
internal static class CautionWords
{
    private const double Letters = 0.018, Lowest = 0.965;

    /// <returns>Where they begin.</returns>
    public static double Write(PictureInk ink, double left, double room, Theme theme)
    {
        var size = Letters * ink.Scale;
        var indent = 0.022 * ink.Scale;
        var lines = PlacingCautions.All.AsEnumerable().SelectMany(text => TextFit.Lines(text, room - indent, size, false)).ToList();
        var top = Lowest - (lines.Count * 1.75 * size) - size;
        ink.Box(left, top, left + (0.007 * ink.Scale), Lowest + (0.4 * size), theme.Lane.Miss);
        var baseline = top + (1.6 * size);
        foreach (var line in lines)
        {
            ink.Write(line, left + indent, baseline, size, theme.Lane.Text);
            baseline += 1.75 * size;
        }

        return top;
    }
}
