namespace AimTrainer.Display;

/// <summary>A plain message on an otherwise dark picture, in picture coordinates: it needs no map of the lane.</summary>
public static class NoticeScene
{
    private const double TitleSize = 0.08, Pitch = 0.085;

    /// <summary>What a projector shows whose map is missing or not to be trusted: nothing to aim at, and what to do.</summary>
    /// <param name="aspect">The picture's width in picture heights, 1 to 4.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="why">Why there is no map, in a sentence; null when it was never made.</param>
    public static Scene<ScreenPoint> Uncalibrated(double aspect, Theme theme, string? why = null) => Build(
        aspect, theme, "No target: not calibrated",
        [why ?? "This projector has not been told where the lane is.", "From behind the foul line: aimtrainer calibrate", "Nobody walks on the lane; nobody looks into the beam."]);

    /// <summary>A message.</summary>
    /// <param name="aspect">The picture's width in picture heights, 1 to 4.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="title">The heading; cut off when it is too long.</param>
    /// <param name="texts">What to say below it; what finds no room is left out.</param>
    /// <exception cref="ArgumentOutOfRangeException">The aspect is outside its range.</exception>
    public static Scene<ScreenPoint> Build(double aspect, Theme theme, string title, IReadOnlyList<string> texts)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(aspect, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(aspect, 4);

        // The ground is that of a projector, dark in every theme: this is thrown on a lane.
        var ink = new ScreenInk(theme.Screen with { Ground = LanePalette.Ground }, aspect);
        var left = 2 * ScreenInk.Margin;
        var room = aspect - (2 * left);
        var baseline = 0.3;
        foreach (var line in TextFit.Lines(title, room, TitleSize, true).Take(2))
        {
            ink.Write(line, left, baseline, TitleSize, theme.Lane.Text, bold: true);
            baseline += 1.6 * TitleSize;
        }

        ink.Box(left, baseline - 0.075, left + 0.3, baseline - 0.065, theme.Lane.Rim);
        baseline += 0.03;
        foreach (var text in texts)
        {
            foreach (var line in TextFit.Lines(text, room, ScreenInk.Small, false))
            {
                if (baseline > 0.95)
                {
                    return ink.Scene();
                }

                ink.Write(line, left, baseline, ScreenInk.Small, theme.Lane.Text);
                baseline += Pitch;
            }

            baseline += 0.02;
        }

        return ink.Scene();
    }
}
