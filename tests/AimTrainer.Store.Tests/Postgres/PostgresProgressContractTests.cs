namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresProgressContractTests(PostgresServer server) : ProgressContract(new PostgresTestRecord(server));
