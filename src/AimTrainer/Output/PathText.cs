using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Motion;

namespace AimTrainer.Output;

/// <summary>A path for people: the lane with its oil and the ball every five feet, then the figures.</summary>
internal static class PathText
{
    private const int EveryFeet = 5;

    public static void Print(UserConsole console, BallPath path, LaneSurface lane)
    {
        var (end, release) = (path.End, path.Release);
        var output = console.Out;
        output.WriteLine($"A ball worked out, not thrown: {(release.Hand == Hand.Right ? "right" : "left")} hand. The lane from above, pins at the top, board "
            + $"{(release.Hand == Hand.Right ? "39 on the left, 1 on the right" : "1 on the left, 39 on the right")};");
        output.WriteLine("O the ball, # much oil, : some, . little.");
        output.WriteLine();
        foreach (var feet in Rows(path).Reverse())
        {
            var point = path.At(feet);
            var mph = point.MetresPerSecond / Release.MetresPerSecondPerMph;
            output.WriteLine(Text($"{feet,5:0.#} ft |{Strip(lane, release.Hand, point)}|  board {point.Board,5:0.0}  {point.Seconds:0.00} s  {mph:0.0} mph"));
        }

        output.WriteLine();
        Line(output, "at the arrows", Board(end.ArrowsBoard, lane.ArrowsFeet));
        Line(output, "breakpoint", double.IsNaN(end.BreakpointBoard) ? "none: the ball never turns from outward to inward" : Board(end.BreakpointBoard, end.BreakpointFeet));
        Line(output, "rolls from", double.IsNaN(end.RollFeet) ? "never: it slides to the end" : Text($"{end.RollFeet:0.0} ft"));
        if (end.Finish == PathFinish.Gutter)
        {
            Line(output, "ends", Text($"in the gutter at {end.EndFeet:0.0} ft, after {end.EndSeconds:0.00} s"));
        }
        else
        {
            Line(output, "at 60 ft", Text($"board {end.BoardAt60:0.00}, {Angle(end.AngleAt60Degrees)}, after {end.EndSeconds:0.00} s"));
            Line(output, "head pin", double.IsNaN(end.ContactBoard)
                ? "not touched"
                : Text($"touched with the ball's middle on board {end.ContactBoard:0.00}, {Angle(end.ContactAngleDegrees)}"));
        }

        Line(output, "speed", Text($"{release.SpeedMph:0.0} mph at the laydown, {end.EndMetresPerSecond / Release.MetresPerSecondPerMph:0.0} mph at the end"));
        Line(output, "phases", double.IsNaN(path.SkidLengthFeet)
            ? Text($"rolls {path.RollLengthFeet:0.0} ft")
            : Text($"skids {path.SkidLengthFeet:0.0} ft to the breakpoint, hooks {path.HookLengthFeet:0.0} ft, rolls {path.RollLengthFeet:0.0} ft"));
        Line(output, "energy", Text($"{path.EnergyAtLaydownJoules:0} J at the laydown, {path.EnergyAtEndJoules:0} J at the end"));
        output.WriteLine();
        output.WriteLine("A model of a symmetric ball; frictions of a real lane are not known from a pattern sheet (docs/motion.md).");
        output.WriteLine(Cautions.Always[0]);
    }

    private static IEnumerable<double> Rows(BallPath path) => Enumerable.Range(0, ((int)LaneSurface.EndFeet / EveryFeet) + 1).Select(i => (double)(i * EveryFeet))
        .Where(feet => feet > path.Release.LaydownFeet && feet < path.End.EndFeet).Prepend(path.Release.LaydownFeet).Append(path.End.EndFeet);

    private static string Strip(LaneSurface lane, Hand hand, PathPoint point)
    {
        Span<char> boards = stackalloc char[LaneProfile.BoardCount];
        var ball = Math.Clamp((int)Math.Round(point.Board, MidpointRounding.ToEven), 1, LaneProfile.BoardCount);
        for (var board = 1; board <= LaneProfile.BoardCount; board++)
        {
            var covered = 1 - Math.Exp(-lane.OilAt(point.Feet, hand == Hand.Right ? board : LaneProfile.BoardCount + 1 - board) / lane.OilScaleUnits);
            boards[board - 1] = board == ball ? 'O' : covered > 0.9 ? '#' : covered > 0.5 ? ':' : covered > 0.05 ? '.' : ' ';
        }

        if (hand == Hand.Right)
        {
            boards.Reverse();
        }

        return boards.ToString();
    }

    private static string Board(double board, double feet) => double.IsNaN(board) ? "not reached" : Text($"board {board:0.00} at {feet:0.0} ft");

    private static string Angle(double degrees) => Text($"{Math.Abs(degrees):0.00} degrees {(degrees >= 0 ? "inward" : "outward")}");

    private static void Line(TextWriter output, string what, string text) => output.WriteLine($"{what,-14} {text}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
