namespace AimTrainer.Store.Tests;

public sealed class SqlitePracticeContractTests() : PracticeContract(new SqliteTestRecord());
