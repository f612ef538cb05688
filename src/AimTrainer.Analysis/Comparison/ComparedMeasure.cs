using System.Text.Json.Serialization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>What is compared of two balls' paths.</summary>
/// <param name="Name">As a shot file calls it: <c>entryBoard</c>, <c>boardAt42.5</c>; <c>sharpness</c>, <c>speedAtPins</c>.</param>
/// <param name="Unit">What it is counted in.</param>
/// <param name="Distance">Where, for a board at a distance.</param>
/// <param name="Claimed">Whether a difference of it is judged; else it only shows the shape of the paths.</param>
public sealed record ComparedMeasure(string Name, MeasureUnit Unit, [property: JsonPropertyName("distanceFeet")] Feet? Distance, bool Claimed);
