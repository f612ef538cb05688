namespace AimTrainer.Store;

/// <summary>What became of one session of a delivery.</summary>
/// <param name="Id">The session.</param>
/// <param name="Sequence">Its last step at the chain now: the next to be sent is the one after it.</param>
/// <param name="Erased">Whether it was erased for good.</param>
/// <param name="Problem">Why steps were not taken, and what to do; null when all were, or were there already.</param>
public sealed record DeliveredAnswer(string Id, long Sequence, bool Erased, string? Problem);
