namespace AimTrainer.Store.Tests;

public sealed class SqliteErasureContractTests() : ErasureContract(new SqliteTestRecord());
