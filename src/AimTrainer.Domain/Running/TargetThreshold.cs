namespace AimTrainer.Domain;

/// <summary>A threshold and the target it belongs to.</summary>
/// <param name="Target">The target's name.</param>
/// <param name="Threshold">Where hits and misses balance.</param>
public sealed record TargetThreshold(string Target, Threshold Threshold);
