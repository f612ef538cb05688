using System.Globalization;
using AimTrainer.Motion;

namespace AimTrainer.Output;

/// <summary>An advice for people.</summary>
internal static class AimText
{
    public static void Print(UserConsole console, AimView view)
    {
        var (output, advice, window) = (console.Out, view.Advice, view.Settings.Window);
        var where = window.Place == WindowPlace.Contact ? "at the touch of the head pin" : "at 60 ft";
        var angles = Text($"{window.LowAngleDegrees:0.##} to {window.HighAngleDegrees:0.##} degrees");
        output.WriteLine(Text($"Pocket window: boards {window.LowBoard:0.##} to {window.HighBoard:0.##}, {angles}, {where}."));
        output.WriteLine($"{char.ToUpperInvariant(view.Source[0])}{view.Source[1..]}.");
        output.WriteLine();
        var best = advice.Best;
        if (!advice.ReachesWindow)
        {
            output.WriteLine("No line of these reaches the window in more than one throw of a hundred.");
            output.WriteLine(Text($"The nearest: board in it {best.BoardChance * 100:0} times of 100, angle in it {best.AngleChance * 100:0}; {Arrives(window, advice.Meant)}."));
            output.WriteLine("Widen the window with --pocket-angle or --pocket-boards: one that is never reached compares nothing.");
            output.WriteLine();
        }

        var downlane = double.IsNaN(advice.DownlaneBoard) ? "in the gutter" : Text($"board {advice.DownlaneBoard:0.0}");
        output.WriteLine(Text($"Best line: board {advice.ArrowsBoard:0.0} at the arrows ({view.ArrowsFeet:0.#} ft), {downlane} at {view.Settings.DownlaneFeet:0.#} ft;"));
        var angle = best.Line.LaunchAngleDegrees;
        output.WriteLine(Text($"           laid down on board {best.Line.LaydownBoard:0.0}, {Math.Abs(angle):0.00} degrees {(angle >= 0 ? "outward" : "inward")}."));
        output.WriteLine(Text($"Chance:    {best.Chance * 100:0.0} of 100 reach the window (counted, +-{advice.ChanceError * 100:0.0} one standard error);"));
        output.WriteLine(view.LaneFitted
            ? Text($"           {advice.LowChance * 100:0} to {advice.HighChance * 100:0} over nine in ten of the {advice.Lanes} lanes that this may be.")
            : "           the lane file was taken as exact: how far it may be off is not in this (see fit-lane, --fit).");
        output.WriteLine(advice.Room is { } room
            ? $"Room:      {Boards(room.ParallelOutward)} to {Boards(room.ParallelInward)} boards alike at laydown and target, "
                + $"{Boards(room.ArrowsOutward)} to {Boards(room.ArrowsInward)} at the arrows alone (positive inward)."
            : "Room:      none to tell: the throw that is meant does not reach the window itself.");
        output.WriteLine();
        output.WriteLine("Halving a spread would add, on this line:");
        foreach (var worth in advice.Worths.AsEnumerable().OrderByDescending(worth => worth.Points))
        {
            output.WriteLine(Text($"  {Name(worth.Part),-13} {worth.Points,6:0.0} points (+-{worth.ErrorPoints:0.0})"));
        }

        output.WriteLine(advice.Practise is { } part
            ? $"So practise the {Name(part)}: drill {view.DrillId}, with this line as its target{(view.DrillFile is { } file ? $", written to {file}" : " (--write-drill FILE)")}."
            : $"None stands out. To train the line itself: drill {view.DrillId}{(view.DrillFile is { } other ? $", written to {other}" : " (--write-drill FILE)")}.");
        output.WriteLine();
        output.WriteLine("Reaching the window is not a strike: no published table of strikes was found, so none is made up (docs/motion.md).");
        foreach (var caution in Cautions.Always)
        {
            output.WriteLine(caution);
        }
    }

    private static string Name(ScatterPart part) => part switch
    {
        ScatterPart.Laydown => "laydown",
        ScatterPart.LaunchAngle => "launch angle",
        ScatterPart.Speed => "speed",
        _ => "revs",
    };

    private static string Arrives(PocketWindow window, PathEnd meant) => double.IsNaN(window.Board(meant))
        ? "the ball that is meant passes the head pin or ends in a gutter"
        : Text($"the ball that is meant comes in at {window.Angle(meant):0.0} degrees on board {window.Board(meant):0.0}");

    private static string Boards(double boards) => (boards == 0 ? 0 : boards).ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
