namespace AimTrainer.Store;

/// <summary>A ball of one bowler. Made when it is first named in a session or a shot.</summary>
public sealed class BallRow
{
    /// <summary>Given by the database.</summary>
    public long Id { get; init; }

    /// <summary>Whose it is.</summary>
    public required long BowlerId { get; init; }

    /// <summary>The name as it was first written.</summary>
    public required string Name { get; init; }

    /// <summary>The name as <see cref="NameKey"/> makes it; one of a kind for its bowler.</summary>
    public required string Key { get; init; }
}
