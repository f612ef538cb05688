namespace AimTrainer.Web;

/// <summary>What came of starting a group's drill for one member.</summary>
/// <param name="Bowler">Who.</param>
/// <param name="Station">On which lane; null without one.</param>
/// <param name="SessionId">The session; null when it was not started.</param>
/// <param name="Why">Why not; null when it was.</param>
public sealed record MemberStarted(string Bowler, int? Station, string? SessionId, string? Why);
