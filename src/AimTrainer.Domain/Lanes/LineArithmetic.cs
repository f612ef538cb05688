namespace AimTrainer.Domain;

/// <summary>Straight lines on the lane: the arithmetic of targets, laydown and angle.</summary>
public static class LineArithmetic
{
    /// <summary>The launch angle of the straight line from one place to another farther down.</summary>
    /// <returns>Degrees to 0.001, positive outward.</returns>
    /// <exception cref="ArgumentException">The second place is not farther down the lane.</exception>
    public static Degrees LaunchAngle(Crossing near, Crossing far, LaneProfile lane)
    {
        if (far.Distance <= near.Distance)
        {
            throw new ArgumentException("the second place must be farther down the lane", nameof(far));
        }

        var acrossInches = (near.Board - far.Board).Boards * lane.Width.Value / LaneProfile.BoardCount;
        var downInches = (far.Distance.Value - near.Distance.Value) * 12;
        return Degrees.FromMeasurement(Math.Atan2(acrossInches, downInches) * 180 / Math.PI);
    }

    /// <summary>The board at which the straight line through two places crosses a distance.</summary>
    /// <exception cref="ArgumentException">Both places lie at one distance.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The line leaves what a <see cref="Board"/> can hold.</exception>
    public static Board BoardAt(Crossing first, Crossing second, Feet distance)
    {
        if (first.Distance == second.Distance)
        {
            throw new ArgumentException("the two places must lie at different distances", nameof(second));
        }

        var share = (distance.Value - first.Distance.Value) / (second.Distance.Value - first.Distance.Value);
        return Board.FromBoards(first.Board.Boards + ((second.Board - first.Board).Boards * share));
    }

    /// <summary>
    /// How far a move shifts the straight line at some distance: feet + (target - feet) x distance / target distance. The
    /// straight line only: a ball that hooks from the new line may finish elsewhere. Similar triangles, as behind the 3-1-2 rule
    /// of probowluk.co.uk (LaneCraft) and the "4 and 2" of Tenpin Bowling Australia's coaching tips.
    /// </summary>
    /// <param name="move">How far feet and target move.</param>
    /// <param name="targetDistance">Where the target lies, more than 0 ft; for the arrows <see cref="LaneProfile.ArrowsDistance"/>.</param>
    /// <param name="distance">Where the shift is asked for; negative on the approach.</param>
    /// <returns>Boards to 0.0001, positive inside.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The target lies at or before the foul line, or the shift leaves what a <see cref="BoardOffset"/> can hold.</exception>
    public static BoardOffset ShiftAt(LineMove move, Feet targetDistance, Feet distance)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(targetDistance.Value, nameof(targetDistance));
        var share = distance.Value / targetDistance.Value;
        return BoardOffset.FromBoards(move.Feet.Boards + ((move.Target - move.Feet).Boards * share));
    }

    /// <summary>The board at which the straight line from a laydown crosses a distance, when it leaves at an angle.</summary>
    /// <param name="laydown">The board at the foul line.</param>
    /// <param name="launchAngle">Positive outward; less than 90 degrees to either side.</param>
    /// <param name="distance">Feet past the foul line; negative on the approach.</param>
    /// <param name="lane">Whose boards: a wider lane has wider ones.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is too large, or the line leaves what a <see cref="Board"/> can hold.</exception>
    public static Board BoardAt(Board laydown, Degrees launchAngle, Feet distance, LaneProfile lane)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(Math.Abs(launchAngle.Value), 90, nameof(launchAngle));
        var outwardInches = Math.Tan(launchAngle.Value * Math.PI / 180) * distance.Value * 12;
        return Board.FromBoards(laydown.Boards - (outwardInches * LaneProfile.BoardCount / lane.Width.Value));
    }

    /// <summary>The board where the ball should leave the oil: pattern length in feet less 31, at that distance (common practice).</summary>
    /// <param name="patternLength">32 to 52 ft.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pattern is shorter or longer.</exception>
    public static Crossing ExitOfPattern(Feet patternLength)
    {
        FixedPoint.InRange(patternLength.Value, 32, 52, nameof(patternLength));
        return new Crossing(patternLength, Board.FromBoards(patternLength.Value - 31));
    }
}
