using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>
/// A person's wish to be forgotten, as it is kept after the person is: which sessions went, and no name.
/// </summary>
/// <param name="Id">One of a kind.</param>
/// <param name="AskedAt">When it was asked for.</param>
/// <param name="Sessions">The sessions.</param>
/// <param name="ChainDoneAt">When the chain confirmed that it erased them too; null until then.</param>
public sealed record Erasure(string Id, DateTimeOffset AskedAt, ValueList<string> Sessions, DateTimeOffset? ChainDoneAt);
