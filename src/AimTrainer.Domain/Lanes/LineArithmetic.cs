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

    /// <summary>The board where the ball should leave the oil: pattern length in feet less 31, at that distance (common practice).</summary>
    /// <param name="patternLength">32 to 52 ft.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pattern is shorter or longer.</exception>
    public static Crossing ExitOfPattern(Feet patternLength)
    {
        FixedPoint.InRange(patternLength.Value, 32, 52, nameof(patternLength));
        return new Crossing(patternLength, Board.FromBoards(patternLength.Value - 31));
    }
}
