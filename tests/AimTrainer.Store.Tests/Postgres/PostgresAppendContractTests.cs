namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresAppendContractTests(PostgresServer server) : AppendContract(new PostgresTestRecord(server));
