namespace AimTrainer.Domain;

/// <summary>What came of a change: the new order, or why it is not possible.</summary>
/// <param name="Lineup">The order now; the old one when refused.</param>
/// <param name="Refusal">What is in the way and what to do; null when it was done.</param>
public sealed record TurnOutcome(Lineup Lineup, string? Refusal);
