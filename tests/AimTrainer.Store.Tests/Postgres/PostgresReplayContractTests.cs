namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresReplayContractTests(PostgresServer server) : ReplayContract(new PostgresTestRecord(server));
