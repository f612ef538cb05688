using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>What was observed of one throw. Everything is optional: what was not measured is null, and stays unknown.</summary>
/// <remarks>Made by <see cref="ShotReading"/>, which checks every range and rounds every value once.</remarks>
public sealed record Shot
{
    [JsonConstructor]
    internal Shot()
    {
    }

    /// <summary>The sender's own name for this shot; the same id twice is one shot.</summary>
    public string? Id { get; init; }

    /// <summary>When it was thrown.</summary>
    public DateTimeOffset? Time { get; init; }

    /// <summary>Where the shot came from.</summary>
    public ShotSource Source { get; init; }

    /// <summary>Crossings by distance, nearest first, one a distance; laydown, breakpoint and entry are not repeated here.</summary>
    public ValueList<Crossing> Crossings { get; init; } = [];

    /// <summary>Where the ball touched the lane, taken at the foul line.</summary>
    [JsonPropertyName("laydownBoard")]
    public Board? Laydown { get; init; }

    /// <summary>Where the ball was farthest outside.</summary>
    public Breakpoint? Breakpoint { get; init; }

    /// <summary>The board on which the ball reached the pins, taken at 60 ft.</summary>
    [JsonPropertyName("entryBoard")]
    public Board? Entry { get; init; }

    /// <summary>The direction in which the ball reached the pins, positive into the pocket.</summary>
    [JsonPropertyName("entryAngleDegrees")]
    public Degrees? EntryAngle { get; init; }

    /// <summary>The direction in which the ball left, positive outward, as reported; see <see cref="LaunchAngles"/> for a computed one.</summary>
    [JsonPropertyName("launchAngleDegrees")]
    public Degrees? LaunchAngle { get; init; }

    /// <summary>How fast, and where that was measured.</summary>
    public BallSpeed? Speed { get; init; }

    /// <summary>Rev rate.</summary>
    [JsonPropertyName("revsRpm")]
    public Rpm? Revs { get; init; }

    /// <summary>0 is forward roll, 90 is pure side roll.</summary>
    [JsonPropertyName("axisRotationDegrees")]
    public Degrees? AxisRotation { get; init; }

    /// <summary>0 is a level axis, 90 is a spinning top.</summary>
    [JsonPropertyName("axisTiltDegrees")]
    public Degrees? AxisTilt { get; init; }

    /// <summary>Pins knocked down, 0 to 10.</summary>
    public int? Pins { get; init; }

    /// <summary>The ball's name, as the bowler calls it.</summary>
    public string? Ball { get; init; }

    /// <summary>Anything else.</summary>
    public string? Note { get; init; }
}
