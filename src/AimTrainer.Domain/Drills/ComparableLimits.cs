namespace AimTrainer.Domain;

/// <summary>
/// When a throw counts as the same throw. Each limit is how far a value may lie from what is expected: the value the drill gives;
/// for laydown and launch angle at a line else the line's own, drawn straight back to the foul line; else the bowler's baseline.
/// </summary>
public sealed record ComparableLimits
{
    /// <summary>How far the speed may lie off.</summary>
    public MilesPerHour? SpeedWithin { get; init; }

    /// <summary>How far the rev rate may lie off.</summary>
    public Rpm? RevsWithin { get; init; }

    /// <summary>How far the launch angle may lie off.</summary>
    public Degrees? LaunchAngleWithin { get; init; }

    /// <summary>How far the laydown may lie off.</summary>
    public BoardOffset? LaydownWithin { get; init; }

    /// <summary>The values that the drill gives; those it leaves null come from the line or the bowler.</summary>
    public Baseline Given { get; init; } = new();

    /// <summary>Whether a throw outside the limits leaves the width alone.</summary>
    public bool LeftOutOfSizing { get; init; }
}
