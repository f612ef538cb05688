using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>Whose practice is asked for.</summary>
/// <param name="BowlerId">The bowler.</param>
/// <param name="Bowler">As the name was first written.</param>
/// <param name="Hand">Of the newest session.</param>
/// <param name="Simulated">Whether there are simulated sessions only.</param>
/// <param name="From">Sessions set up at this time or later.</param>
/// <param name="To">Sessions set up before this time.</param>
internal sealed record PracticeScope(long BowlerId, string Bowler, Hand Hand, bool Simulated, DateTimeOffset? From, DateTimeOffset? To);
