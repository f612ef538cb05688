using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>An erasure as it is kept after the person is gone: which sessions went, and no name.</summary>
/// <param name="Id">One of a kind.</param>
/// <param name="At">When it was asked for.</param>
/// <param name="Sessions">The sessions' ids.</param>
public sealed record Erasure(string Id, DateTimeOffset At, ValueList<string> Sessions)
{
    /// <summary>When rows and bytes were gone from the record here; null when it is to be seen to again.</summary>
    public DateTimeOffset? FinishedAt { get; init; }

    /// <summary>When the chain confirmed that it erased them too; null until then, and where there is no chain.</summary>
    public DateTimeOffset? ChainToldAt { get; init; }
}
