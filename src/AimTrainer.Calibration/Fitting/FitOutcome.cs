using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>What came of a fit: a map with its quality, or the reasons why there is none.</summary>
/// <param name="Fit">The map; null when refused.</param>
/// <param name="Refusals">The reasons; empty when there is a map.</param>
public sealed record FitOutcome(MapFit? Fit, ValueList<FitRefusal> Refusals);
