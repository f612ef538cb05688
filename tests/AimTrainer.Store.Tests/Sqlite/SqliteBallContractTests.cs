namespace AimTrainer.Store.Tests;

public sealed class SqliteBallContractTests() : BallContract(new SqliteTestRecord());
