namespace AimTrainer.Store;

/// <summary>How far a session of this center has come.</summary>
/// <param name="Key">Grows with each session.</param>
/// <param name="Id">The session.</param>
/// <param name="StartedAt">When it was set up: none of its steps is older.</param>
/// <param name="Ended">Whether it is over.</param>
/// <param name="Sequence">Its last step; 0 before the first.</param>
public sealed record SessionPosition(long Key, string Id, DateTimeOffset StartedAt, bool Ended, long Sequence);
