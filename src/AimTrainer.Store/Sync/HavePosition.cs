namespace AimTrainer.Store;

/// <summary>How far a session has come at the chain.</summary>
/// <param name="Id">The session.</param>
/// <param name="Sequence">Its last step there; 0 before the first.</param>
/// <param name="Erased">Whether it was erased for good: nothing of it is taken any more.</param>
public sealed record HavePosition(string Id, long Sequence, bool Erased);
