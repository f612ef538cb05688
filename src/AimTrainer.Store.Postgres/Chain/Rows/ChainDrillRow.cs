namespace AimTrainer.Store.Postgres;

/// <summary>A drill as it was used, whichever center sent it.</summary>
public sealed class ChainDrillRow
{
    /// <summary>SHA-256 of its bytes, lower-case hex.</summary>
    public required string Hash { get; init; }

    /// <summary>Its id.</summary>
    public required string DrillId { get; init; }

    /// <summary>Its name for people.</summary>
    public required string Name { get; init; }

    /// <summary>The bytes as text.</summary>
    public required string Json { get; init; }
}
