using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>A bowler's usual throw, as far as it is known.</summary>
public sealed record Baseline
{
    /// <summary>Usual speed and where it is measured; only a shot measured at the same place can be held against it.</summary>
    public BallSpeed? Speed { get; init; }

    /// <summary>Usual rev rate.</summary>
    [JsonPropertyName("revsRpm")]
    public Rpm? Revs { get; init; }

    /// <summary>Usual launch angle, positive outward.</summary>
    [JsonPropertyName("launchAngleDegrees")]
    public Degrees? LaunchAngle { get; init; }

    /// <summary>Usual laydown board.</summary>
    [JsonPropertyName("laydownBoard")]
    public Board? Laydown { get; init; }
}
