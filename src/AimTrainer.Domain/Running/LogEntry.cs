namespace AimTrainer.Domain;

/// <summary>One step of a session as it is kept: what came in, and what came of it.</summary>
/// <param name="Sequence">Counts the session's steps, from 1, without gaps.</param>
/// <param name="Input">What came in.</param>
/// <param name="Events">What came of it; never empty.</param>
public sealed record LogEntry(long Sequence, SessionInput Input, ValueList<SessionEvent> Events);
