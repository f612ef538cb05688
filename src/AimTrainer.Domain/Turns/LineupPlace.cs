namespace AimTrainer.Domain;

/// <summary>One bowler's place in the order of a lane.</summary>
/// <param name="SessionId">The bowler's own session.</param>
/// <param name="Bowler">The name in the records.</param>
/// <param name="Status">How the bowler stands.</param>
/// <param name="Counted">Shots of the session that have been counted as turns, 0 or more.</param>
public sealed record LineupPlace(string SessionId, string Bowler, TurnStatus Status, int Counted);
