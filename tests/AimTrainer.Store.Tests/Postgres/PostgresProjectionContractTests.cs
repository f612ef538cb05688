namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresProjectionContractTests(PostgresServer server) : ProjectionContract(new PostgresTestRecord(server));
