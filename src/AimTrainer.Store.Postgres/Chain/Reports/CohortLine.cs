using AimTrainer.Analysis;

namespace AimTrainer.Store.Postgres;

/// <summary>How many of those who came first in one month came again in a later one.</summary>
/// <param name="Month">The month of their first session, its first day, UTC.</param>
/// <param name="People">How many they are.</param>
/// <param name="MonthsLater">How many months later, from 1.</param>
/// <param name="Returned">How many came in that month; null while the month is not over.</param>
/// <param name="Share">The part of them, with Wilson's limits.</param>
public sealed record CohortLine(DateTimeOffset Month, int People, int MonthsLater, int? Returned, BoundedEstimate Share);
