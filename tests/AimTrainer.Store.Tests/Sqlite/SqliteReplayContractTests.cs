namespace AimTrainer.Store.Tests;

public sealed class SqliteReplayContractTests() : ReplayContract(new SqliteTestRecord());
