namespace AimTrainer.Domain;

/// <summary>Where a target is, or why that cannot be told.</summary>
/// <param name="Target">The target; null when its place cannot be told.</param>
/// <param name="Problem">What is missing and what to do; null when there is a target.</param>
public sealed record Resolution(ResolvedTarget? Target, string? Problem);
