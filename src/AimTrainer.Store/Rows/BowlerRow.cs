namespace AimTrainer.Store;

/// <summary>A bowler. Made when the first session under a name is kept.</summary>
public sealed class BowlerRow
{
    /// <summary>Given by the database.</summary>
    public long Id { get; init; }

    /// <summary>The name as it was first written.</summary>
    public required string Name { get; init; }

    /// <summary>The name as <see cref="Domain.NameKey"/> makes it; one of a kind.</summary>
    public required string Key { get; init; }
}
