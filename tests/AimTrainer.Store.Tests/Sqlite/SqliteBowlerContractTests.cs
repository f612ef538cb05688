namespace AimTrainer.Store.Tests;

public sealed class SqliteBowlerContractTests() : BowlerContract(new SqliteTestRecord());
