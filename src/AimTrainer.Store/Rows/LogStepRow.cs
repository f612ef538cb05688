namespace AimTrainer.Store;

/// <summary>One step of a session's log. Never changed: everything else about the session can be worked out from these again.</summary>
public sealed class LogStepRow
{
    /// <summary>Which session.</summary>
    public required long SessionKey { get; init; }

    /// <summary>Counts the session's steps, from 1, without gaps.</summary>
    public required long Sequence { get; init; }

    /// <summary>When the input came in.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>What came in.</summary>
    public required string InputJson { get; init; }

    /// <summary>What came of it.</summary>
    public required string EventsJson { get; init; }
}
