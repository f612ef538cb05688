namespace AimTrainer.Domain;

/// <summary>What is told of one shot.</summary>
/// <param name="Number">Which shot.</param>
/// <param name="Held">Whether the aim was held; null when that was not measured.</param>
/// <param name="Targets">What is told of each target; empty when only <paramref name="Held"/> is told.</param>
public sealed record ToldShot(int Number, bool? Held, ValueList<ToldTarget> Targets);
