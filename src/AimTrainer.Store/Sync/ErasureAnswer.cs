namespace AimTrainer.Store;

/// <summary>The chain has nothing of the named sessions any more, and takes nothing of them.</summary>
/// <param name="Erased">How many sessions it had something of.</param>
public sealed record ErasureAnswer(int Erased);
