using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A planned session that some of a group can throw today.</summary>
/// <param name="Week">Its week, from 1.</param>
/// <param name="Session">The plan.</param>
/// <param name="Bowlers">For how many it is open.</param>
/// <param name="IsMakeUp">Whether its own week is past.</param>
/// <param name="LastDay">The last day on which it counts.</param>
public sealed record OpenSession(int Week, PlannedSession Session, int Bowlers, bool IsMakeUp, DateOnly LastDay);
