using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>What to take care of, before the first shot.</summary>
internal static class CautionCard
{
    private const double FirstBaseline = 0.29, Pitch = 0.082, BetweenTexts = 0.02, LastBaseline = 0.86, Indent = 0.05;

    public static void Add(ScreenInk ink, OverheadLayout layout, SessionSnapshot snapshot)
    {
        var room = layout.Right - OverheadLayout.Left;
        ink.Write(TextFit.Cut("Before you throw", room, 0.1, true), OverheadLayout.Left, 0.155, 0.1, ink.Palette.Text, bold: true);
        ink.Box(OverheadLayout.Left, 0.19, OverheadLayout.Left + 0.3, 0.2, ink.Palette.Target);
        var baseline = FirstBaseline;
        var left = 0;
        foreach (var text in Texts(snapshot.Drill))
        {
            var lines = TextFit.Lines(text, room - Indent, ScreenInk.Small, false);
            if (left > 0 || baseline + ((lines.Count - 1) * Pitch) > LastBaseline)
            {
                left++;
                continue;
            }

            ink.Polygon(ink.Palette.Target, (OverheadLayout.Left, baseline - 0.04), (OverheadLayout.Left + 0.024, baseline - 0.02), (OverheadLayout.Left, baseline));
            foreach (var line in lines)
            {
                ink.Write(line, OverheadLayout.Left + Indent, baseline, ScreenInk.Small, ink.Palette.Text);
                baseline += Pitch;
            }

            baseline += BetweenTexts;
        }

        var foot = left > 0 ? $"and {SceneWords.Whole(left)} more: ask your coach" : $"{snapshot.Drill?.Name}, lane {SceneWords.Whole(snapshot.Station)}";
        ink.Write(TextFit.Cut(foot, room, ScreenInk.Small, true), OverheadLayout.Left, OverheadLayout.FootBaseline, ScreenInk.Small, ink.Palette.Quiet, bold: true);
    }

    /// <summary>Ours first, then the drill's own; one that says what ours say is not said twice.</summary>
    private static IEnumerable<string> Texts(DrillScript? drill) =>
        new[] { SceneWords.FoulLineShort, SceneWords.NobodyIntoTheBeam, SceneWords.HowArmFeels }
            .Concat((drill?.Cautions ?? []).Where(text => text != SceneWords.NobodyPastTheFoulLine));
}
