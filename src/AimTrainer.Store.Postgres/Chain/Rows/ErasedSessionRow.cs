namespace AimTrainer.Store.Postgres;

/// <summary>A session that was erased for good, or is to be. No name, so that it may stay.</summary>
public sealed class ErasedSessionRow
{
    /// <summary>Which center.</summary>
    public required int CenterId { get; init; }

    /// <summary>The id there.</summary>
    public required string SessionId { get; init; }

    /// <summary>When it was asked for.</summary>
    public required DateTimeOffset AskedAt { get; init; }

    /// <summary>When the center confirmed it; null until then.</summary>
    public DateTimeOffset? CenterDoneAt { get; set; }
}
