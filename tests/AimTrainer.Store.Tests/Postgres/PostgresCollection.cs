namespace AimTrainer.Store.Tests;

/// <summary>The tests that share one server, and so come one after the other.</summary>
[CollectionDefinition(Name)]
public sealed class PostgresCollection : ICollectionFixture<PostgresServer>
{
    public const string Name = "PostgreSQL";
}
