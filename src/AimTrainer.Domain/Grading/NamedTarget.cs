namespace AimTrainer.Domain;

/// <summary>A target and what the drill calls it.</summary>
/// <param name="Name">The name, one of a kind within its block.</param>
/// <param name="Target">The target as it is shown.</param>
public sealed record NamedTarget(string Name, Target Target);
