namespace AimTrainer.Store.Postgres;

/// <summary>A bowler of one center. Bowlers of two centers who have the same name are two until somebody says that they are one.</summary>
public sealed class ChainBowlerRow
{
    /// <summary>Given by the database.</summary>
    public long Id { get; init; }

    /// <summary>Which center.</summary>
    public required int CenterId { get; init; }

    /// <summary>The name as it was first written there.</summary>
    public required string Name { get; init; }

    /// <summary>The name as it is compared; one of a kind at its center.</summary>
    public required string Key { get; init; }

    /// <summary>Who it is, when somebody said so.</summary>
    public long? PersonId { get; set; }
}
