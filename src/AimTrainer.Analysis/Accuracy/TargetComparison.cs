namespace AimTrainer.Analysis;

/// <summary>Early against late at one target.</summary>
/// <param name="Target">The target.</param>
/// <param name="Comparison">What changed.</param>
public sealed record TargetComparison(string Target, SpreadComparison Comparison);
