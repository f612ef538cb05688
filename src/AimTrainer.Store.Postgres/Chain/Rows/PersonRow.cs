namespace AimTrainer.Store.Postgres;

/// <summary>One person, whom somebody recognised at several centers.</summary>
public sealed class PersonRow
{
    /// <summary>Given by the database.</summary>
    public long Id { get; init; }

    /// <summary>What the chain calls the person; one of a kind.</summary>
    public required string Name { get; init; }
}
