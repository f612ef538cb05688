using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>A map fitted to marks, and how good it is.</summary>
/// <param name="Map">The map.</param>
/// <param name="LaneWidth">The lane's width that boards were reckoned with.</param>
/// <param name="DistortionTerms">How many terms of lens distortion were fitted.</param>
/// <param name="Marks">Each mark with its error, in the order given.</param>
/// <param name="Quality">All of them together.</param>
/// <param name="Distances">How fine and how sure the map is, every 5 ft of its stretch.</param>
public sealed record MapFit(
    ProjectorMap Map, Inches LaneWidth, int DistortionTerms, ValueList<MarkError> Marks, FitQuality Quality, ValueList<DistanceQuality> Distances);
