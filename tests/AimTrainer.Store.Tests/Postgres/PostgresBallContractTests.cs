namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresBallContractTests(PostgresServer server) : BallContract(new PostgresTestRecord(server));
