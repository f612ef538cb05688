namespace AimTrainer.Store.Postgres;

/// <summary>A run of a block of a session.</summary>
public sealed class ChainBlockRow
{
    /// <summary>Which session.</summary>
    public required long SessionKey { get; init; }

    /// <summary>Counts blocks as they were thrown, from 0.</summary>
    public required int Run { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Test, training or warm-up, as in the drill.</summary>
    public required string Kind { get; init; }
}
