namespace AimTrainer.Domain;

/// <summary>A week of a program.</summary>
/// <param name="Name">What it is about.</param>
/// <param name="Sessions">Its sessions, in order.</param>
public sealed record PlannedWeek(string Name, ValueList<PlannedSession> Sessions);
