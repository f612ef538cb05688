using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>
/// What an invented bowler is like. Every number is made up: a setting for trying drills and tests, not a statement about people.
/// Spreads are standard deviations of the first shot, 0 or more.
/// </summary>
public sealed record SimulatedBowlerSettings
{
    /// <summary>The same seed gives the same shots.</summary>
    public ulong Seed { get; init; }

    /// <summary>The throwing hand.</summary>
    public Hand Hand { get; init; }

    /// <summary>The name, for the record.</summary>
    public string Name { get; init; } = "Simulated bowler";

    /// <summary>The launch angle that is meant when only one target is shown; degrees, positive outward.</summary>
    public double AngleDegrees { get; init; } = 1;

    /// <summary>How far inside of what is meant the ball is laid down on average, boards.</summary>
    public double LaydownBiasBoards { get; init; }

    /// <summary>Spread of the laydown, boards.</summary>
    public double LaydownSpreadBoards { get; init; } = 0.7;

    /// <summary>Spread of the launch angle, degrees.</summary>
    public double AngleSpreadDegrees { get; init; } = 0.35;

    /// <summary>How far inside of its middle the bowler aims at the first target, boards.</summary>
    public double AimBiasBoards { get; init; }

    /// <summary>Mean speed at release, mph.</summary>
    public double SpeedMilesPerHour { get; init; } = 17;

    /// <summary>Spread of the speed, mph.</summary>
    public double SpeedSpreadMilesPerHour { get; init; } = 0.4;

    /// <summary>Mean rev rate, rpm.</summary>
    public double RevsRpm { get; init; } = 300;

    /// <summary>Spread of the rev rate, rpm.</summary>
    public double RevsSpreadRpm { get; init; } = 12;

    /// <summary>Growth of the spreads of laydown and angle a shot, as a share of the first shot's; 0 or more.</summary>
    public double FatigueAShot { get; init; }

    /// <summary>Share by which those spreads fall from each shot to the next, 0 to below 1.</summary>
    public double LearningAShot { get; init; }

    /// <summary>Share of shots that go quite wrong, 0 to 1.</summary>
    public double GrossErrorRate { get; init; }

    /// <summary>By how much such a shot is off at the first target, to either side, boards.</summary>
    public double GrossErrorBoards { get; init; } = 8;

    /// <summary>Spread of the error with which every board is measured, boards.</summary>
    public double MeasurementNoiseBoards { get; init; } = 0.1;

    /// <summary>Share of values that are not measured, each by itself, 0 to 1.</summary>
    public double MissingRate { get; init; }
}
