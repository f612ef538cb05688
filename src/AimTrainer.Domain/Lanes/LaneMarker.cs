using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>A mark on the lane.</summary>
/// <param name="Kind">Arrow, dot or downlane mark.</param>
/// <param name="FromRight">Its board counted from the right edge, whoever bowls.</param>
/// <param name="Distance">Where it lies, for drawing: feet past the foul line.</param>
public sealed record LaneMarker(
    MarkerKind Kind, [property: JsonPropertyName("boardFromRight")] Board FromRight, [property: JsonPropertyName("feet")] Feet Distance);
