using System.Text.Json.Serialization;
using AimTrainer.Domain;

namespace AimTrainer.Output;

/// <summary>A place on the lane that recorded shots are held against.</summary>
/// <param name="Name">Its board and distance in words.</param>
/// <param name="Centre">Its middle.</param>
/// <param name="Distance">Where along the lane.</param>
/// <param name="Width">Its whole width; null when none was given.</param>
internal sealed record AnalyseTarget(
    string Name,
    [property: JsonPropertyName("centreBoard")] Board Centre,
    [property: JsonPropertyName("distanceFeet")] Feet Distance,
    [property: JsonPropertyName("widthBoards")] BoardOffset? Width);
