using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What the record knows of a bowler.</summary>
/// <param name="Name">As it was first written.</param>
/// <param name="Hand">The hand of the newest session.</param>
/// <param name="Baseline">
/// The usual throw: medians of the last shots that count, each only when at least five were measured; the speed by the place
/// where it was measured most.
/// </param>
/// <param name="Breakpoint">The usual breakpoint, by the same rule, when board and distance were measured.</param>
public sealed record BowlerRecord(string Name, Hand Hand, Baseline Baseline, Breakpoint? Breakpoint);
