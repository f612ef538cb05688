using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>In a comparison who throws next, and how far each ball is at this line.</summary>
internal static class BallGroup
{
    private const double FirstBaseline = 0.068, Pitch = 0.072, Indent = 0.045, Sign = 0.016;

    public static void Add(ScreenInk ink, FigurePanel panel, SessionSnapshot snapshot, BallTurn turn)
    {
        panel.Ground(ink);
        var wanted = BallWords.Wanted(snapshot, turn);
        var baseline = panel.Top + FirstBaseline;
        var title = turn.IsCheck ? "Lane check: has the lane moved?" : wanted is null ? $"Next: {turn.Due.Name}" : $"{wanted} with {turn.Due.Name}";

        // The ball's name stands in the line above the picture, and beside its figure.
        var shorter = turn.IsCheck ? "Lane check" : wanted ?? turn.Due.Name;
        ink.Write(TextFit.First(panel.Room, ScreenInk.Small, true, title, shorter), panel.InnerLeft, baseline, ScreenInk.Small, ink.Palette.Text, bold: true);
        var rows = turn.Balls.Count <= 2
            ? turn.Balls.AsEnumerable().ToList()
            : [turn.Balls.First(cell => cell.Role == turn.Due.Role)];
        foreach (var cell in rows)
        {
            baseline += Pitch;
            Row(ink, panel, baseline, PlaceOf(turn, cell), cell.Ball, Good(snapshot, cell.Good, cell.GoodWanted), cell.Role == turn.Due.Role);
        }

        if (turn.Balls.Count > 2)
        {
            var others = turn.Balls.AsEnumerable().Where(cell => cell.Role != turn.Due.Role).ToList();
            baseline += Pitch;
            Row(
                ink, panel, baseline, null, $"{SceneWords.Whole(others.Count)} other balls",
                Good(snapshot, others.Sum(cell => Math.Min(cell.Good, cell.GoodWanted)), others.Sum(cell => cell.GoodWanted)), isDue: false);
        }
    }

    private static void Row(ScreenInk ink, FigurePanel panel, double baseline, int? place, string name, string good, bool isDue)
    {
        var colour = isDue ? ink.Palette.Text : ink.Palette.Quiet;
        if (place is { } ball)
        {
            ink.BallSign(ball, panel.InnerLeft + Sign, baseline - (ScreenInk.Small / 2), Sign);
        }

        var room = panel.Room - Indent;
        if (good.Length > 0)
        {
            ink.Write(good, panel.Right - FigurePanel.Padding, baseline, ScreenInk.Small, colour, bold: isDue, TextAlign.Right);
            room -= TextRuler.Width(good, ScreenInk.Small, isDue) + 0.03;
        }

        ink.Write(TextFit.Cut(name, room, ScreenInk.Small, isDue), panel.InnerLeft + Indent, baseline, ScreenInk.Small, colour, bold: isDue);
    }

    private static string Good(SessionSnapshot snapshot, int good, int wanted) => snapshot.Block is { } block && TellsAll.Holds(block.Feedback)
        ? $"{SceneWords.Whole(Math.Min(good, wanted))} of {SceneWords.Whole(wanted)}" : "";

    private static int PlaceOf(BallTurn turn, BallCell cell)
    {
        var place = 0;
        while (turn.Balls[place].Role != cell.Role)
        {
            place++;
        }

        return place;
    }
}
