using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>A point on the lane's surface, the same for either hand.</summary>
/// <param name="Across">Inches from the lane's right edge, positive to the left.</param>
/// <param name="Down">Feet past the foul line, positive downlane.</param>
public readonly record struct LanePoint(
    [property: JsonPropertyName("acrossInches")] Inches Across, [property: JsonPropertyName("downFeet")] Feet Down);
