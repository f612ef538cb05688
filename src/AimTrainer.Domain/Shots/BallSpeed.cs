using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>A speed and where it was measured.</summary>
/// <param name="Value">The speed.</param>
/// <param name="Place">Where.</param>
public readonly record struct BallSpeed([property: JsonPropertyName("mph")] MilesPerHour Value, [property: JsonPropertyName("at")] SpeedPlace Place);
