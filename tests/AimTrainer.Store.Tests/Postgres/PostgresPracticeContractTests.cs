namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresPracticeContractTests(PostgresServer server) : PracticeContract(new PostgresTestRecord(server));
