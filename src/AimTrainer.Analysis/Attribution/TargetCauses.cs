using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Where the misses of many shots at one target came from. Boards, positive inside.</summary>
/// <param name="Target">The target.</param>
/// <param name="Distance">Where it lies.</param>
/// <param name="Shots">Split shots whose crossing was measured here, n.</param>
/// <param name="LaydownBoards">Mean laydown part. The three mean parts add up to the mean miss of these shots.</param>
/// <param name="AngleBoards">Mean angle part.</param>
/// <param name="BeyondBoards">Mean of what the ball did beyond the straight line, less what the plan reckons with.</param>
/// <param name="BentBoards">Mean crossing less straight line: all of the movement.</param>
/// <param name="BentSpreadBoards">Standard deviation of the movement.</param>
/// <param name="BentSpreadWithoutNoiseBoards">The same with the readings' errors taken out.</param>
/// <param name="Shares">Shares of the variance, as measured; null when they are not known.</param>
/// <param name="SharesWhy">Why not; null when they are.</param>
/// <param name="SharesWithoutNoise">Shares with the readings' errors taken out; null when they are not known.</param>
/// <param name="SharesWithoutNoiseWhy">Why not; null when they are.</param>
/// <param name="Explanations">Speed and revs as explanations.</param>
public sealed record TargetCauses(
    string Target,
    [property: System.Text.Json.Serialization.JsonPropertyName("distanceFeet")] Feet Distance,
    int Shots,
    BoundedEstimate LaydownBoards,
    BoundedEstimate AngleBoards,
    BoundedEstimate BeyondBoards,
    BoundedEstimate BentBoards,
    BoundedEstimate BentSpreadBoards,
    BoundedEstimate BentSpreadWithoutNoiseBoards,
    VarianceShares? Shares,
    string? SharesWhy,
    VarianceShares? SharesWithoutNoise,
    string? SharesWithoutNoiseWhy,
    ValueList<Explanation> Explanations);
