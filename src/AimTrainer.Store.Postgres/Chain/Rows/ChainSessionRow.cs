namespace AimTrainer.Store.Postgres;

/// <summary>A session of a center, as far as the chain has it.</summary>
public sealed class ChainSessionRow
{
    /// <summary>Given by the database; short, because every step carries it.</summary>
    public long Key { get; init; }

    /// <summary>Which center.</summary>
    public required int CenterId { get; init; }

    /// <summary>The id there; one of a kind at its center.</summary>
    public required string Id { get; init; }

    /// <summary>The station.</summary>
    public required int Station { get; init; }

    /// <summary>When it was set up: its month is the part of the tables that its rows lie in.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>Who threw.</summary>
    public required long BowlerId { get; init; }

    /// <summary>With which hand.</summary>
    public required string Hand { get; init; }

    /// <summary>Which drill.</summary>
    public required string DrillHash { get; init; }

    /// <summary>What people call the lane.</summary>
    public required string LaneName { get; init; }

    /// <summary>The whole setup, as the center keeps it.</summary>
    public required string SetupJson { get; init; }

    /// <summary>Whether the simulated bowler throws.</summary>
    public required bool Simulated { get; init; }

    /// <summary>When it was over.</summary>
    public DateTimeOffset? EndedAt { get; init; }

    /// <summary>The last step that is here.</summary>
    public required long LastSequence { get; init; }

    /// <summary>Shots that count.</summary>
    public required int Shots { get; init; }

    /// <summary>Their points.</summary>
    public required int Points { get; init; }
}
