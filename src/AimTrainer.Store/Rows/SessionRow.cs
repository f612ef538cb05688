using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>A session: what was fixed before the first shot, and how far it has come.</summary>
public sealed class SessionRow
{
    /// <summary>Given by the database; short, because every step and shot carries it.</summary>
    public long Key { get; init; }

    /// <summary>The session's own id; one of a kind.</summary>
    public required string Id { get; init; }

    /// <summary>The station, from 1.</summary>
    public required int Station { get; init; }

    /// <summary>When it was set up.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>Who throws.</summary>
    public required long BowlerId { get; init; }

    /// <summary>With which hand.</summary>
    public required Hand Hand { get; init; }

    /// <summary>The ball thrown unless a shot says otherwise.</summary>
    public long? BallId { get; init; }

    /// <summary>Which drill, by its bytes.</summary>
    public required string DrillHash { get; init; }

    /// <summary>What people call the lane; the lane itself is in <see cref="SetupJson"/>.</summary>
    public required string LaneName { get; init; }

    /// <summary>The whole <see cref="SessionSetup"/>.</summary>
    public required string SetupJson { get; init; }

    /// <summary>Whether the simulated bowler throws.</summary>
    public required bool Simulated { get; init; }

    /// <summary>When it was over; null while it can be gone on with.</summary>
    public DateTimeOffset? EndedAt { get; init; }

    /// <summary>Shots that count, so far.</summary>
    public int Shots { get; init; }

    /// <summary>Their points.</summary>
    public int Points { get; init; }

    /// <summary>The run of the block being thrown, from 0; null before the first.</summary>
    public int? Run { get; init; }

    /// <summary>The name of the block being thrown.</summary>
    public string? BlockName { get; init; }

    /// <summary>The kind of the block being thrown.</summary>
    public BlockKind? BlockKind { get; init; }
}
