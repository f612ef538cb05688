using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A planned session and what was thrown of it.</summary>
/// <param name="Week">Its week, from 1.</param>
/// <param name="WeekStarts">The week's first day.</param>
/// <param name="Session">The plan.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="SessionIds">The sessions of the record that count for it.</param>
/// <param name="Goals">Its goals for the bowler's level.</param>
/// <param name="ThrownOn">The day on which the last of them was begun, UTC; null while none counts.</param>
public sealed record PlannedStanding(
    int Week, DateOnly WeekStarts, PlannedSession Session, SessionStanding Standing, ValueList<string> SessionIds, ValueList<GoalResult> Goals, DateOnly? ThrownOn);
