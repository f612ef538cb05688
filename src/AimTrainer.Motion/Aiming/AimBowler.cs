using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>A bowler as an aim needs one: the usual throw and its scatter. Bare doubles whose names carry the unit.</summary>
/// <param name="Hand">The hand.</param>
/// <param name="SpeedMph">Usual speed at the laydown.</param>
/// <param name="RevsRpm">Usual revs.</param>
/// <param name="AxisRotationDegrees">Usual axis rotation.</param>
/// <param name="Scatter">How throws scatter.</param>
public sealed record AimBowler(Hand Hand, double SpeedMph, double RevsRpm, double AxisRotationDegrees, Scatter Scatter)
{
    /// <summary>Usual axis tilt.</summary>
    public double AxisTiltDegrees { get; init; }

    /// <summary>Where the ball touches the lane, feet past the foul line.</summary>
    public double LaydownFeet { get; init; }

    /// <summary>The throw that is meant on a line.</summary>
    public Release Meant(AimLine line) => new(Hand, line.LaydownBoard, line.LaunchAngleDegrees, SpeedMph * Release.MetresPerSecondPerMph, RevsRpm)
    {
        AxisRotationDegrees = AxisRotationDegrees,
        AxisTiltDegrees = AxisTiltDegrees,
        LaydownFeet = LaydownFeet,
    };
}
