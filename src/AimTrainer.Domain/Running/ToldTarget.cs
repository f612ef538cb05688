using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>What is told of one target.</summary>
/// <param name="Name">Which target.</param>
/// <param name="Side">1 inside, -1 outside, 0 on its centre; null when not measured.</param>
/// <param name="Miss">By how much; null when withheld or not measured.</param>
public sealed record ToldTarget(string Name, int? Side, [property: JsonPropertyName("missBoards")] BoardOffset? Miss);
