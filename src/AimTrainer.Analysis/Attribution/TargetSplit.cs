using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Where the miss at one target came from. The three parts add up to the miss. All in boards, positive inside.</summary>
/// <param name="Target">The target.</param>
/// <param name="Distance">Where it lies.</param>
/// <param name="MissBoards">Crossing less centre; null when nobody measured it.</param>
/// <param name="LaydownBoards">Laid down so far from the plan's laydown.</param>
/// <param name="AngleBoards">What the angle, off the plan's, made of it by here.</param>
/// <param name="BeyondBoards">What the ball did beyond the straight line, less what it was reckoned to do: positive is early, or more hook.</param>
/// <param name="StraightBoard">Where the ball would have crossed had it gone on straight.</param>
/// <param name="BentBoards">Crossing less <paramref name="StraightBoard"/>: all of the movement, whatever was reckoned with.</param>
/// <param name="Why">Why the parts are null; null when they are known.</param>
public sealed record TargetSplit(
    string Target,
    [property: System.Text.Json.Serialization.JsonPropertyName("distanceFeet")] Feet Distance,
    double? MissBoards,
    double? LaydownBoards,
    double? AngleBoards,
    double? BeyondBoards,
    double? StraightBoard,
    double? BentBoards,
    string? Why);
