using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// The straight line on which a ball left: board = laydown + slope · feet. Fitted to what was measured in the straight part of the lane and
/// nowhere else.
/// </summary>
/// <param name="LaydownBoard">Board at the foul line, measured or carried back along the line.</param>
/// <param name="BoardsAFoot">Slope in boards a foot, positive inside.</param>
/// <param name="LaunchAngleDegrees">The same as an angle, positive outward.</param>
/// <param name="From">From what it is known.</param>
/// <param name="Readings">The readings it is fitted to, nearest first.</param>
public sealed record StraightLine(double LaydownBoard, double BoardsAFoot, double LaunchAngleDegrees, StraightSource From, ValueList<Crossing> Readings)
{
    /// <summary>The board at a distance, if the ball went on straight.</summary>
    public double BoardAt(Feet distance) => LaydownBoard + (BoardsAFoot * distance.Value);

    /// <summary>A slope as an angle.</summary>
    /// <param name="boardsAFoot">Positive inside.</param>
    /// <param name="lane">Whose boards.</param>
    /// <returns>Degrees, positive outward.</returns>
    public static double DegreesOf(double boardsAFoot, LaneProfile lane) => -Math.Atan(boardsAFoot * lane.BoardWidth.Value / 12) * 180 / Math.PI;

    /// <summary>An angle as a slope.</summary>
    /// <param name="degrees">Positive outward, less than 90 to either side.</param>
    /// <param name="lane">Whose boards.</param>
    /// <returns>Boards a foot, positive inside.</returns>
    public static double SlopeOf(double degrees, LaneProfile lane) => -Math.Tan(degrees * Math.PI / 180) * 12 / lane.BoardWidth.Value;
}
