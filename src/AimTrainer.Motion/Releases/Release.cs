using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// How a ball leaves the hand, for number-crunching: bare doubles whose names carry the unit. The ranges are those of
/// <see cref="Problem"/>; nothing is rounded, so that a small change of an input is a small change of the path.
/// </summary>
/// <param name="Hand">Which hand: the edge from which boards are counted, and the side that the ball hooks to.</param>
/// <param name="LaydownBoard">The bowler's board where the ball touches the lane, 0.5 to 39.5.</param>
/// <param name="LaunchAngleDegrees">Heading at the laydown, positive outward (toward the bowler's own gutter), -10 to 10.</param>
/// <param name="SpeedMetresPerSecond">Speed of the ball's centre at the laydown, 2 to 16.</param>
/// <param name="RevsRpm">Whole rate of turning, 0 to 1000.</param>
public readonly record struct Release(Hand Hand, double LaydownBoard, double LaunchAngleDegrees, double SpeedMetresPerSecond, double RevsRpm)
{
    /// <summary>Metres per second in one mile per hour, exact.</summary>
    public const double MetresPerSecondPerMph = 0.44704;

    /// <summary>Slowest ball that is worked out; slower ones could come to rest across the lane.</summary>
    public const double SlowestMetresPerSecond = 2;

    /// <summary>Fastest ball that is worked out, about 36 mph.</summary>
    public const double FastestMetresPerSecond = 16;

    /// <summary>Most revs, to either launch side.</summary>
    public const double MostRpm = 1000;

    /// <summary>Widest launch angle, to either side.</summary>
    public const double WidestLaunchDegrees = 10;

    /// <summary>Farthest laydown past the foul line.</summary>
    public const double FarthestLaydownFeet = 10;

    /// <summary>Most tilt.</summary>
    public const double MostTiltDegrees = 90;

    /// <summary>
    /// Axis rotation against the launch direction: 0 rolls forward, 90 is pure side roll that hooks inward, a negative one hooks
    /// outward. -90 to 90; 45 unless said.
    /// </summary>
    public double AxisRotationDegrees { get; init; } = 45;

    /// <summary>Axis tilt: how much of the turning is about the upright, which never touches the path. 0 to 90.</summary>
    public double AxisTiltDegrees { get; init; }

    /// <summary>Where the ball touches the lane, feet past the foul line, 0 to 10.</summary>
    public double LaydownFeet { get; init; }

    /// <summary>Speed in miles per hour.</summary>
    public double SpeedMph => SpeedMetresPerSecond / MetresPerSecondPerMph;

    /// <summary>What is wrong with this release and what is allowed, or null when a path can be worked out for it.</summary>
    public string? Problem() =>
        Outside(LaydownBoard, Board.NearEdge.Boards, Board.FarEdge.Boards, "the laydown board")
        ?? Outside(LaydownFeet, 0, FarthestLaydownFeet, "the laydown, feet past the foul line,")
        ?? Outside(LaunchAngleDegrees, -WidestLaunchDegrees, WidestLaunchDegrees, "the launch angle in degrees")
        ?? Outside(SpeedMetresPerSecond, SlowestMetresPerSecond, FastestMetresPerSecond, "the speed in m/s")
        ?? Outside(RevsRpm, 0, MostRpm, "the revs in rpm")
        ?? Outside(AxisRotationDegrees, -90, 90, "the axis rotation in degrees")
        ?? Outside(AxisTiltDegrees, 0, MostTiltDegrees, "the axis tilt in degrees");

    private static string? Outside(double value, double low, double high, string what) =>
        value >= low && value <= high
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"{what} is {value}; allowed: {low} to {high}");
}
