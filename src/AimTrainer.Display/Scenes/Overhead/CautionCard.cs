using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>What to take care of, before the first shot.</summary>
internal static class CautionCard
{
    private const double FirstTop = 0.245, BetweenTexts = 0.022, Bottom = 0.885, Indent = 0.05, Large = 0.062;

    private const string Title = "Before you throw";

    public static void Add(ScreenInk ink, OverheadLayout layout, SessionSnapshot snapshot)
    {
        var room = layout.Right - OverheadLayout.Left;
        var title = Math.Min(0.1, room / TextRuler.Width(Title, 1, true));
        ink.Write(Title, OverheadLayout.Left, 0.055 + title, title, ink.Palette.Text, bold: true);
        ink.Box(OverheadLayout.Left, 0.19, OverheadLayout.Left + 0.3, 0.2, ink.Palette.Target);
        var texts = Texts(snapshot.Drill).ToList();
        var size = texts.Sum(text => Height(text, room, Large)) <= Bottom - FirstTop ? Large : ScreenInk.Small;
        var (top, left) = (FirstTop, 0);
        foreach (var text in texts)
        {
            if (left > 0 || top + Height(text, room, size) - BetweenTexts > Bottom)
            {
                left++;
                continue;
            }

            ink.Polygon(
                ink.Palette.Target, (OverheadLayout.Left, top + (0.1 * size)), (OverheadLayout.Left + 0.024, top + (0.5 * size)), (OverheadLayout.Left, top + (0.9 * size)));
            foreach (var line in TextFit.Lines(text, room - Indent, size, false))
            {
                ink.Write(line, OverheadLayout.Left + Indent, top + size, size, ink.Palette.Text);
                top += Pitch(size);
            }

            top += BetweenTexts;
        }

        var foot = left > 0 ? $"and {SceneWords.Whole(left)} more: ask your coach" : $"{snapshot.Drill?.Name}, lane {SceneWords.Whole(snapshot.Station)}";
        ink.Write(TextFit.Cut(foot, room, ScreenInk.Small, true), OverheadLayout.Left, OverheadLayout.FootBaseline, ScreenInk.Small, ink.Palette.Quiet, bold: true);
    }

    private static double Height(string text, double room, double size) => (TextFit.Lines(text, room - Indent, size, false).Count * Pitch(size)) + BetweenTexts;

    private static double Pitch(double size) => 1.5 * size;

    /// <summary>Ours first, then the drill's own; one that says what ours say is not said twice.</summary>
    private static IEnumerable<string> Texts(DrillScript? drill) =>
        new[] { SceneWords.FoulLineShort, SceneWords.NobodyIntoTheBeam, SceneWords.HowArmFeels }
            .Concat((drill?.Cautions ?? []).Where(text => text != SceneWords.NobodyPastTheFoulLine));
}
