using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// A straight line as a bowler plays it: where it starts, how it leaves, where the foot slides, and the boards that it crosses. The
/// ball follows it only until it hooks.
/// </summary>
public sealed record LinePlan
{
    /// <summary>Boards from the slide foot to the middle of the ball when a bowler has not measured his own.</summary>
    /// <remarks>Source: coaching sites give about 7 for men and 6 for women, 4 to 10 in all (richjacobsonbowling.com, bowlingball.com); a setting.</remarks>
    public static BoardOffset UsualLaydownDistance { get; } = BoardOffset.FromBoards(7);

    private LinePlan(Crossing near, Crossing far, Hand hand, LaneProfile lane, BoardOffset laydownDistance)
    {
        (Near, Far, Hand, Lane, LaydownDistance) = (near, far, hand, lane, laydownDistance);
        LaunchAngle = LineArithmetic.LaunchAngle(near, far, lane);
        Laydown = BoardAt(default);
    }

    /// <summary>The nearer target.</summary>
    public Crossing Near { get; }

    /// <summary>The farther target.</summary>
    public Crossing Far { get; }

    /// <summary>The bowler's hand.</summary>
    public Hand Hand { get; }

    /// <summary>The lane.</summary>
    public LaneProfile Lane { get; }

    /// <summary>From the middle of the ball at the laydown to the slide foot; positive inside.</summary>
    public BoardOffset LaydownDistance { get; }

    /// <summary>Board at the foul line.</summary>
    public Board Laydown { get; }

    /// <summary>Positive outward, to 0.001 degree.</summary>
    public Degrees LaunchAngle { get; }

    /// <summary>Board that the slide foot ends on.</summary>
    public Board Slide => Laydown + LaydownDistance;

    /// <summary>Board at the lane's arrow distance.</summary>
    public Board Arrows => BoardAt(Lane.ArrowsDistance);

    /// <summary>A line through two targets.</summary>
    /// <param name="near">The nearer one.</param>
    /// <param name="far">One farther down.</param>
    /// <param name="hand">The bowler's hand.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="laydownDistance">The bowler's own; the usual one when null.</param>
    /// <exception cref="ArgumentException">The second is not farther down.</exception>
    public static LinePlan Through(Crossing near, Crossing far, Hand hand, LaneProfile lane, BoardOffset? laydownDistance = null) =>
        new(near, far, hand, lane, laydownDistance ?? UsualLaydownDistance);

    /// <summary>The line from a laydown at an angle: the other way round. Its targets are at the arrows and at a distance downlane.</summary>
    /// <param name="laydown">Board at the foul line.</param>
    /// <param name="launchAngle">Positive outward.</param>
    /// <param name="downlane">Where its farther target lies, beyond the arrows.</param>
    /// <param name="hand">The bowler's hand.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="laydownDistance">The bowler's own; the usual one when null.</param>
    /// <exception cref="ArgumentException">The distance is not beyond the arrows.</exception>
    public static LinePlan Leaving(
        Board laydown, Degrees launchAngle, Feet downlane, Hand hand, LaneProfile lane, BoardOffset? laydownDistance = null) => Through(
            new Crossing(lane.ArrowsDistance, LineArithmetic.BoardAt(laydown, launchAngle, lane.ArrowsDistance, lane)),
            new Crossing(downlane, LineArithmetic.BoardAt(laydown, launchAngle, downlane, lane)),
            hand,
            lane,
            laydownDistance);

    /// <summary>Where it crosses a distance.</summary>
    /// <param name="distance">Feet past the foul line; negative on the approach.</param>
    /// <exception cref="ArgumentOutOfRangeException">It leaves what a <see cref="Board"/> can hold.</exception>
    public Board BoardAt(Feet distance) => LineArithmetic.BoardAt(Near, Far, distance);

    /// <summary>The first distance from the foul line to the pins where the line is off the boards, in whole feet; null when it never is.</summary>
    public Feet? OffTheLane()
    {
        for (var feet = 0; feet <= (int)LaneProfile.HeadPin.Value; feet++)
        {
            var board = BoardAt(Feet.FromFeet(feet));
            if (board < Board.NearEdge || board > Board.FarEdge)
            {
                return Feet.FromFeet(feet);
            }
        }

        return null;
    }

    /// <summary>
    /// The line after a move. The feet move the laydown, the target is that at the arrows: its farther target is then wherever the new line
    /// crosses its distance.
    /// </summary>
    /// <param name="move">Feet and target, positive inside.</param>
    /// <exception cref="ArgumentOutOfRangeException">The line leaves what a <see cref="Board"/> can hold.</exception>
    public LinePlan Moved(LineMove move)
    {
        var arrows = new Crossing(Lane.ArrowsDistance, Arrows + move.Target);
        var laydown = new Crossing(default, Laydown + move.Feet);
        return Through(
            Near with { Board = LineArithmetic.BoardAt(laydown, arrows, Near.Distance) },
            Far with { Board = LineArithmetic.BoardAt(laydown, arrows, Far.Distance) },
            Hand,
            Lane,
            LaydownDistance);
    }

    /// <summary>What a move does at a distance: how far the straight line shifts there, positive inside.</summary>
    /// <param name="move">Feet and target at the arrows, positive inside.</param>
    /// <param name="distance">Where.</param>
    public BoardOffset Shift(LineMove move, Feet distance) => LineArithmetic.ShiftAt(move, Lane.ArrowsDistance, distance);
}
