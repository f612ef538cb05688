namespace AimTrainer.Analysis;

/// <summary>Between which limits a value plausibly lies.</summary>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit.</param>
public readonly record struct TrendLimits(double Low, double High);
