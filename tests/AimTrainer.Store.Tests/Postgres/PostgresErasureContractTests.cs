namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresErasureContractTests(PostgresServer server) : ErasureContract(new PostgresTestRecord(server));
