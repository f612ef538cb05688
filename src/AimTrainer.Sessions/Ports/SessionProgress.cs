namespace AimTrainer.Sessions;

/// <summary>How far a stored session has come.</summary>
/// <param name="SessionId">Its id.</param>
/// <param name="Ended">Whether it is over.</param>
/// <param name="Sequence">The sequence of its last step; 0 before the first.</param>
public sealed record SessionProgress(string SessionId, bool Ended, long Sequence);
