using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>A speed and where it was measured.</summary>
/// <param name="Value">The speed.</param>
/// <param name="Place">Where.</param>
public readonly record struct BallSpeed([property: JsonPropertyName("mph")] MilesPerHour Value, [property: JsonPropertyName("at")] SpeedPlace Place)
{
    /// <summary>The average speed of a ball that took some time from the foul line to the head pin, 60 ft.</summary>
    /// <param name="time">Long enough for at most 100 mph: 0.41 s or more.</param>
    /// <returns>The speed to 0.01 mph, measured as <see cref="SpeedPlace.Average"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Too short a time, or none.</exception>
    public static BallSpeed FromTimeToPins(TimeSpan time)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(time, TimeSpan.Zero);
        var milesPerHour = LaneProfile.HeadPin.Value / 5280 / time.TotalHours;
        return new BallSpeed(MilesPerHour.FromMeasurement(milesPerHour), SpeedPlace.Average);
    }
}
