namespace AimTrainer.Domain;

/// <summary>An aim that was read, with its targets and their places.</summary>
/// <param name="Plan">The aim.</param>
/// <param name="Targets">Its targets.</param>
internal sealed record ReadAim(AimPlan Plan, IReadOnlyList<ReadTarget> Targets);
