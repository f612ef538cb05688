namespace AimTrainer.Store;

/// <summary>A drill as it was when it was used. The same bytes are kept once, however often they are thrown.</summary>
public sealed class DrillRow
{
    /// <summary>SHA-256 of the bytes, lower-case hex.</summary>
    public required string Hash { get; init; }

    /// <summary>The drill's id; many versions of a drill have the same.</summary>
    public required string DrillId { get; init; }

    /// <summary>Its name for people.</summary>
    public required string Name { get; init; }

    /// <summary>The bytes as text.</summary>
    public required string Json { get; init; }
}
