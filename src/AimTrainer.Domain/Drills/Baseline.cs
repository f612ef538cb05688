namespace AimTrainer.Domain;

/// <summary>A bowler's usual throw, as far as it is known.</summary>
public sealed record Baseline
{
    /// <summary>Usual speed and where it is measured; only a shot measured at the same place can be held against it.</summary>
    public BallSpeed? Speed { get; init; }

    /// <summary>Usual rev rate.</summary>
    public Rpm? Revs { get; init; }

    /// <summary>Usual launch angle, positive outward.</summary>
    public Degrees? LaunchAngle { get; init; }

    /// <summary>Usual laydown board.</summary>
    public Board? Laydown { get; init; }
}
