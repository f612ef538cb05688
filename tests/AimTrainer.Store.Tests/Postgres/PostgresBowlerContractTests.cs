namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresBowlerContractTests(PostgresServer server) : BowlerContract(new PostgresTestRecord(server));
