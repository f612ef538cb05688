using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>How the sending of a center's events stands.</summary>
public sealed record SyncState
{
    /// <summary>The chain's address.</summary>
    public required string Chain { get; init; }

    /// <summary>What the chain calls this center; null until it was reached.</summary>
    public string? Center { get; init; }

    /// <summary>Steps that the chain has not confirmed; null when it is not known what the chain has.</summary>
    public long? WaitingSteps { get; init; }

    /// <summary>In how many sessions they are.</summary>
    public int? WaitingSessions { get; init; }

    /// <summary>When the oldest of them came in; null when none waits, or it is not known.</summary>
    public DateTimeOffset? WaitingSince { get; init; }

    /// <summary>When the chain last confirmed something.</summary>
    public DateTimeOffset? ReachedAt { get; init; }

    /// <summary>What went wrong last, and what to do; null when all went well since.</summary>
    public string? Error { get; init; }

    /// <summary>When it went wrong.</summary>
    public DateTimeOffset? ErrorAt { get; init; }

    /// <summary>Sessions that the chain does not take, with its reasons.</summary>
    public ValueList<string> SetAside { get; init; } = [];

    /// <summary>Erasures that the chain has not confirmed.</summary>
    public int ErasuresWaiting { get; init; }

    /// <summary>Whether nothing waits and nothing is wrong.</summary>
    public bool IsComplete => WaitingSteps == 0 && Error is null && SetAside.Count == 0 && ErasuresWaiting == 0;
}
