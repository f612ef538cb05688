using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>What the shots of a block came to.</summary>
/// <param name="PerTarget">One a target, in the order in which they were first thrown at.</param>
/// <param name="Points">Points of all graded targets together.</param>
public sealed record BlockSummary(ValueList<TargetSummary> PerTarget, int Points);
