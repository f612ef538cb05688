using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>The right column: what to do, what came of the last action, the keys, and the cautions. Words give way to the keys, which all have their place.</summary>
internal static class AdviceColumn
{
    private const double KeyLetters = 0.0165, KeyPitch = 0.033, KeyDoes = 0.185;

    public static void Draw(PictureInk ink, CalibrationView view, double left, double width, Theme theme)
    {
        var (s, placing, colours) = (ink.Scale, view.Placing, theme.Lane);
        var cautions = CautionWords.Write(ink, left, width, theme);
        var keys = cautions - (PlacingKeys.Help.Count * KeyPitch * s);
        DrawKeys(ink, left, keys, colours);

        var baseline = 0.05 * s;
        void Say(string text, double size, Colour colour, bool bold)
        {
            var most = (int)Math.Floor((keys - (KeyPitch * s) - baseline) / (size * 1.75)) + 1;
            baseline = ink.Words(text, left, baseline, width, size, colour, bold, Math.Max(most, 0)) + (0.008 * s);
        }

        if (view.Trouble is { } trouble)
        {
            Say(trouble, 0.02 * s, colours.Miss, bold: true);
        }
        else
        {
            Say(ToDo(placing), 0.022 * s, colours.Text, bold: true);
        }

        Say(placing.Said, 0.018 * s, colours.Trail, bold: false);
        if (view.Monitor is null)
        {
            Say("An ordinary window, for trying out: nothing is saved.", 0.018 * s, colours.Trail, bold: false);
        }
    }

    /// <summary>Shorter than the state's own words where the left column names the mark.</summary>
    private static string ToDo(MarkPlacing placing) => placing.Phase == PlacingPhase.Abandoned ? "Given up. U goes back; Esc closes this window."
        : placing.Preview is { Fit: null } && placing.SetCount >= FitSettings.MarksNeeded(placing.Fitting.DistortionTerms) ? placing.ToDo
        : "From behind the foul line, move the crosshair onto this mark. Enter sets it.";

    private static void DrawKeys(PictureInk ink, double left, double baseline, LanePalette colours)
    {
        foreach (var (key, does) in PlacingKeys.Help)
        {
            ink.Write(key, left, baseline, KeyLetters * ink.Scale, colours.Rim);
            ink.Write(does, left + (KeyDoes * ink.Scale), baseline, KeyLetters * ink.Scale, colours.Text);
            baseline += KeyPitch * ink.Scale;
        }
    }
}
