namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresRoundTripContractTests(PostgresServer server) : RoundTripContract(new PostgresTestRecord(server));
