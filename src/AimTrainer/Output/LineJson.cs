using AimTrainer.Domain;
using AimTrainer.Motion;

namespace AimTrainer.Output;

/// <summary>A planned line as <c>docs/motion.md</c> describes it.</summary>
internal static class LineJson
{
    private const int EveryFeet = 5;

    public static object Of(LinePlan plan, Crossing? exit, ValueList<LineMove> moves, ValueList<LinePlan>? walked) => new
    {
        plan.Hand,
        Line = LineNotation.Write(plan),
        LaydownBoard = plan.Laydown,
        LaunchAngleDeg = plan.LaunchAngle,
        SlideBoard = plan.Slide,
        SlideDistanceBoards = plan.LaydownDistance,
        ArrowsFeet = plan.Lane.ArrowsDistance,
        ArrowsBoard = plan.Arrows,
        OffTheLaneFeet = plan.OffTheLane(),
        Boards = Distances().Select(feet => new { Feet = feet, Board = plan.BoardAt(feet), AcrossInches = plan.Lane.PointOf(plan.BoardAt(feet), feet, plan.Hand).Across }),
        Exit = exit is { } place
            ? new { Feet = place.Distance, place.Board, LineBoard = plan.BoardAt(place.Distance), LineInsideBoards = plan.BoardAt(place.Distance) - place.Board }
            : null,
        Moves = moves.AsEnumerable().Select(move => Move(plan, move)),
        Walk = walked?.AsEnumerable().Select(line => new
        {
            Line = LineNotation.Write(line),
            ArrowsBoard = line.Arrows,
            LaydownBoard = line.Laydown,
            LaunchAngleDeg = line.LaunchAngle,
            SlideBoard = line.Slide,
        }),
    };

    private static object Move(LinePlan plan, LineMove move)
    {
        var moved = plan.Moved(move);
        return new
        {
            Name = LineMoves.Name(move),
            FeetBoards = move.Feet,
            TargetBoards = move.Target,
            Parallel = LineMoves.IsParallel(move),
            Line = LineNotation.Write(moved),
            LaydownBoard = moved.Laydown,
            LaunchAngleDeg = moved.LaunchAngle,
            SlideBoard = moved.Slide,
            Shifts = Distances().Select(feet => new { Feet = feet, Boards = plan.Shift(move, feet) }),
        };
    }

    private static IEnumerable<Feet> Distances() => Enumerable.Range(0, ((int)LaneProfile.HeadPin.Value / EveryFeet) + 1).Select(i => Feet.FromFeet(i * EveryFeet));
}
