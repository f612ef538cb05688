namespace AimTrainer.Store.Postgres;

/// <summary>A center of the chain.</summary>
public sealed class CenterRow
{
    /// <summary>Given by the database.</summary>
    public int Id { get; init; }

    /// <summary>What people call it; one of a kind.</summary>
    public required string Name { get; init; }

    /// <summary>SHA-256 of its token, lower-case hex; the token itself is nowhere.</summary>
    public required string TokenHash { get; init; }

    /// <summary>When it was added.</summary>
    public required DateTimeOffset AddedAt { get; init; }

    /// <summary>When its token was taken back; null while it is good.</summary>
    public DateTimeOffset? RevokedAt { get; set; }

    /// <summary>When it was last heard of.</summary>
    public DateTimeOffset? HeardAt { get; set; }
}
