using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>How one target was crossed.</summary>
/// <param name="Name">The target's name.</param>
/// <param name="Target">The target exactly as it was shown.</param>
/// <param name="Crossing">Where the ball crossed it, and how that is known.</param>
/// <param name="Miss">Crossing less centre; null when unknown.</param>
/// <param name="Grade">The award; null when unknown.</param>
public sealed record TargetResult(string Name, Target Target, TargetCrossing Crossing, [property: JsonPropertyName("missBoards")] BoardOffset? Miss, Grade? Grade);
