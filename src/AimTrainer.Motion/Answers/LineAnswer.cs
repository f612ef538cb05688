using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>A planned line for machines, as <c>docs/motion.md</c> describes it.</summary>
/// <param name="Hand">The bowler's hand.</param>
/// <param name="Line">Both targets, BOARD@FEET.</param>
/// <param name="LaydownBoard">Board at the foul line.</param>
/// <param name="LaunchAngleDeg">Positive outward.</param>
/// <param name="SlideBoard">Board of the slide foot.</param>
/// <param name="SlideDistanceBoards">From the ball's middle at the laydown to it.</param>
/// <param name="ArrowsFeet">Where the arrows are.</param>
/// <param name="ArrowsBoard">Board there.</param>
/// <param name="OffTheLaneFeet">First whole foot where the straight line is off the boards; null when it never is.</param>
/// <param name="Boards">Where it lies every 5 ft.</param>
/// <param name="Exit">The exit of the oil; null when the pattern's length is not given.</param>
/// <param name="Moves">What moves do to it.</param>
/// <param name="Walk">A line for each part of the lane; null when not asked for.</param>
public sealed record LineAnswer(
    Hand Hand,
    string Line,
    Board LaydownBoard,
    Degrees LaunchAngleDeg,
    Board SlideBoard,
    BoardOffset SlideDistanceBoards,
    Feet ArrowsFeet,
    Board ArrowsBoard,
    Feet? OffTheLaneFeet,
    ValueList<LinePlaceAnswer> Boards,
    LineExitAnswer? Exit,
    ValueList<LineMoveAnswer> Moves,
    ValueList<LineWalkAnswer>? Walk)
{
    private const int EveryFeet = 5;

    /// <summary>Distances at which boards and shifts are told.</summary>
    internal static ValueList<Feet> Distances { get; } = Enumerable.Range(0, ((int)LaneProfile.HeadPin.Value / EveryFeet) + 1).Select(i => Feet.FromFeet(i * EveryFeet)).ToValueList();

    /// <summary>The document of a line.</summary>
    /// <param name="plan">The line.</param>
    /// <param name="exit">Where the ball should leave the oil; null when that is not known.</param>
    /// <param name="moves">The moves to tell of.</param>
    /// <param name="walked">A line for each part of the lane; null when not asked for.</param>
    /// <exception cref="ArgumentOutOfRangeException">The line or a move of it leaves what a <see cref="Board"/> can hold.</exception>
    public static LineAnswer Of(LinePlan plan, Crossing? exit, ValueList<LineMove> moves, ValueList<LinePlan>? walked) => new(
        plan.Hand,
        LineNotation.Write(plan),
        plan.Laydown,
        plan.LaunchAngle,
        plan.Slide,
        plan.LaydownDistance,
        plan.Lane.ArrowsDistance,
        plan.Arrows,
        plan.OffTheLane(),
        Distances.Select(feet => new LinePlaceAnswer(feet, plan.BoardAt(feet), plan.Lane.PointOf(plan.BoardAt(feet), feet, plan.Hand).Across)).ToValueList(),
        exit is { } place ? new LineExitAnswer(place.Distance, place.Board, plan.BoardAt(place.Distance), plan.BoardAt(place.Distance) - place.Board) : null,
        moves.Select(move => LineMoveAnswer.Of(plan, move)).ToValueList(),
        walked?.Select(line => new LineWalkAnswer(LineNotation.Write(line), line.Arrows, line.Laydown, line.LaunchAngle, line.Slide)).ToValueList());
}
