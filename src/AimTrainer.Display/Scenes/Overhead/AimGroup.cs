using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>What to aim at, in figures.</summary>
internal static class AimGroup
{
    public static void Add(ScreenInk ink, FigurePanel panel, Aim aim)
    {
        panel.Ground(ink);
        var boards = aim.Targets.AsEnumerable().Select(target => SceneWords.Short(target.Target.Centre.Boards)).ToList();
        var widths = aim.Targets.AsEnumerable().Select(target => target.Target.Width).ToList();
        if (!aim.IsLine)
        {
            var feet = SceneWords.Short(aim.Targets[0].Target.Distance.Value);
            var wide = SceneWords.Boards(widths[0]);
            panel.Main(ink, 0, ink.Palette.Text, $"Board {boards[0]}", boards[0]);
            panel.Below(ink, $"board {boards[0]} at {feet} ft, {wide} wide", $"at {feet} ft, {wide} wide", $"{feet} ft, {wide} wide", $"{wide} wide");
            return;
        }

        var all = string.Join(", ", boards);
        var room = panel.Room;
        var fits = TextRuler.Width(string.Join('-', boards), ScreenInk.Main, true) <= room;
        panel.Main(ink, 0, ink.Palette.Text, string.Join(" to ", boards), fits ? string.Join('-', boards) : "Line");
        var each = string.Join(" and ", widths.Select(width => SceneWords.Short(width.Boards)));
        if (fits)
        {
            panel.Below(ink, $"{each} boards wide", $"{each} wide");
        }
        else
        {
            panel.Below(ink, $"through boards {all}", $"boards {all}", all);
        }
    }
}
