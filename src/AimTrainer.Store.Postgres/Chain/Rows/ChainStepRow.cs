namespace AimTrainer.Store.Postgres;

/// <summary>A step of a log, byte for byte as the center keeps it. In parts by month.</summary>
public sealed class ChainStepRow
{
    /// <summary>When the session was set up.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>Which session.</summary>
    public required long SessionKey { get; init; }

    /// <summary>Counts its steps, from 1.</summary>
    public required long Sequence { get; init; }

    /// <summary>When the input came in.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>What came in.</summary>
    public required string InputJson { get; init; }

    /// <summary>What came of it.</summary>
    public required string EventsJson { get; init; }
}
