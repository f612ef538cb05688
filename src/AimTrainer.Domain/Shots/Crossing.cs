using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>Where the middle of the ball crossed one distance, as measured.</summary>
/// <param name="Distance">Feet past the foul line, 0 to 60.</param>
/// <param name="Board">The bowler's board, to 0.01.</param>
public readonly record struct Crossing([property: JsonPropertyName("feet")] Feet Distance, Board Board);
