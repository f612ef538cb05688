using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>What a move does to a line, for machines.</summary>
/// <param name="Name">As it is called: "2-and-1".</param>
/// <param name="FeetBoards">Feet, positive inward.</param>
/// <param name="TargetBoards">Target at the arrows, positive inward.</param>
/// <param name="Parallel">Whether the angle stays.</param>
/// <param name="Line">The moved line.</param>
/// <param name="LaydownBoard">Its laydown.</param>
/// <param name="LaunchAngleDeg">Its angle.</param>
/// <param name="SlideBoard">Its slide board.</param>
/// <param name="Shifts">What it shifts at each distance.</param>
public sealed record LineMoveAnswer(
    string Name,
    BoardOffset FeetBoards,
    BoardOffset TargetBoards,
    bool Parallel,
    string Line,
    Board LaydownBoard,
    Degrees LaunchAngleDeg,
    Board SlideBoard,
    ValueList<LineShiftAnswer> Shifts)
{
    internal static LineMoveAnswer Of(LinePlan plan, LineMove move)
    {
        var moved = plan.Moved(move);
        return new LineMoveAnswer(
            LineMoves.Name(move),
            move.Feet,
            move.Target,
            LineMoves.IsParallel(move),
            LineNotation.Write(moved),
            moved.Laydown,
            moved.LaunchAngle,
            moved.Slide,
            LineAnswer.Distances.Select(feet => new LineShiftAnswer(feet, plan.Shift(move, feet))).ToValueList());
    }
}
