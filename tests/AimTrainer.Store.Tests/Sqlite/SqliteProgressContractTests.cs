namespace AimTrainer.Store.Tests;

public sealed class SqliteProgressContractTests() : ProgressContract(new SqliteTestRecord());
