using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>The width of a target from the next shot on.</summary>
/// <param name="Width">The width.</param>
/// <param name="Uncertain">Whether the sizing rule does not yet stand by it.</param>
/// <param name="LeftOut">Whether the rule left this shot out of the width as a gross miss.</param>
public readonly record struct NextWidth([property: JsonPropertyName("widthBoards")] BoardOffset Width, bool Uncertain, bool LeftOut);
