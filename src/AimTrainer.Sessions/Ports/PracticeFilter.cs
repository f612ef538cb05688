namespace AimTrainer.Sessions;

/// <summary>Whose practice, and when.</summary>
/// <param name="Bowler">The bowler (name without regard to case).</param>
/// <param name="From">Sessions set up at this time or later; null for no limit.</param>
/// <param name="To">Sessions set up before this time; null for no limit.</param>
public sealed record PracticeFilter(string Bowler, DateTimeOffset? From = null, DateTimeOffset? To = null);
