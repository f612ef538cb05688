using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Motion;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>A planned line for people.</summary>
internal static class LineText
{
    private static readonly double[] _shiftFeet = [0, 15, 40, 45, 60];

    public static void Print(UserConsole console, LinePlan plan, Crossing? exit, ValueList<LineMove> moves, ValueList<LinePlan>? walked, WalkKeeps? keeps)
    {
        var output = console.Out;
        var hand = plan.Hand == Hand.Right ? "right" : "left";
        output.WriteLine($"Line {LineNotation.Write(plan)} (board@feet), {hand} hand: boards count from the {hand} edge. Straight until the ball hooks.");
        output.WriteLine();
        Line(output, "laydown", Invariant($"board {plan.Laydown.Boards:0.00} at the foul line"));
        Line(output, "launch angle", Angle(plan.LaunchAngle));
        Line(output, "slide foot", Invariant($"board {plan.Slide.Boards:0.00}, with {plan.LaydownDistance.Boards:0.##} boards from the ball's middle to the foot"));
        Line(output, "at the arrows", Invariant($"board {plan.Arrows.Boards:0.00} at {plan.Lane.ArrowsDistance} ft"));
        if (exit is { } place)
        {
            var line = plan.BoardAt(place.Distance);
            var exitAt = Invariant($"board {place.Board} at {place.Distance} ft (length less 31, common practice: a place to start)");
            Line(output, "exit of the oil", Invariant($"{exitAt}; this line is there on {line.Boards:0.00}, {Side(line - place.Board)}"));
        }

        if (plan.OffTheLane() is { } off)
        {
            Line(output, "off the boards", off == default
                ? "at the foul line: nobody can lay the ball down there; choose other targets"
                : Invariant($"before {off} ft, if the ball did not hook"));
        }

        Boards(console, plan);
        Moves(console, plan, moves);
        if (walked is not null)
        {
            Walk(console, walked, keeps!.Value);
        }
    }

    private static void Boards(UserConsole console, LinePlan plan)
    {
        var table = Consoles.Table([("feet", ColumnKind.Number), .. Enumerable.Range(0, 13).Select(i => (Invariant($"{i * 5}"), ColumnKind.Number))]);
        Row(table, ["board", .. Enumerable.Range(0, 13).Select(i => Invariant($"{plan.BoardAt(Feet.FromFeet(i * 5)).Boards:0.0}"))]);
        Write(console, table);
    }

    private static void Moves(UserConsole console, LinePlan plan, ValueList<LineMove> moves)
    {
        console.Out.WriteLine();
        console.Out.WriteLine("Moves, feet-and-target at the arrows, boards inward; what each shifts the straight line by, + inward:");
        var table = Consoles.Table(
        [
            ("move", ColumnKind.Number), ("kind", ColumnKind.Name), ("line", ColumnKind.Name), ("slide", ColumnKind.Number), ("angle", ColumnKind.Name),
            .. _shiftFeet.Select(feet => (Invariant($"{feet} ft"), ColumnKind.Number)),
        ]);
        foreach (var move in moves)
        {
            var moved = plan.Moved(move);
            Row(table,
            [
                LineMoves.Name(move), LineMoves.IsParallel(move) ? "parallel" : "angular", LineNotation.Write(moved), Invariant($"{moved.Slide.Boards:0.0}"),
                Angle(moved.LaunchAngle), .. _shiftFeet.Select(feet => Invariant($"{plan.Shift(move, Feet.FromFeet(feet)).Boards:+0.00;-0.00;0}")),
            ]);
        }

        Write(console, table);
    }

    private static void Walk(UserConsole console, ValueList<LinePlan> walked, WalkKeeps keeps)
    {
        console.Out.WriteLine();
        console.Out.WriteLine($"A line for each part of the lane, second to fourth arrow, keeping the {(keeps == WalkKeeps.Angle ? "angle" : "breakpoint")}:");
        var table = Consoles.Table(("line", ColumnKind.Name), ("laydown", ColumnKind.Number), ("slide", ColumnKind.Number), ("angle", ColumnKind.Name));
        foreach (var line in walked)
        {
            Row(table, [LineNotation.Write(line), Invariant($"{line.Laydown.Boards:0.0}"), Invariant($"{line.Slide.Boards:0.0}"), Angle(line.LaunchAngle)]);
        }

        Write(console, table);
    }

    private static string Angle(Degrees angle) => angle.Value == 0
        ? "straight"
        : Invariant($"{Math.Abs(angle.Value):0.00} degrees {(angle.Value > 0 ? "outward" : "inward")}");

    private static string Side(BoardOffset offset) => offset == BoardOffset.Zero
        ? "just there"
        : Invariant($"{offset.Abs().Boards:0.00} boards {(offset > BoardOffset.Zero ? "inside" : "outside")}");

    private static void Row(Table table, IReadOnlyList<string> cells) => table.AddRow([.. cells.Select(cell => new Text(cell))]);

    private static void Write(UserConsole console, Table table) => Consoles.Write(Consoles.For(console), table);

    private static void Line(TextWriter output, string what, string text) => output.WriteLine($"{what,-16} {text}");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
