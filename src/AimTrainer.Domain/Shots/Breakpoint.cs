using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>Where the ball was farthest outside before it turned back.</summary>
/// <param name="Board">The bowler's board, to 0.01.</param>
/// <param name="Distance">Feet past the foul line; null when only the board was seen.</param>
public readonly record struct Breakpoint(Board Board, [property: JsonPropertyName("feet")] Feet? Distance);
