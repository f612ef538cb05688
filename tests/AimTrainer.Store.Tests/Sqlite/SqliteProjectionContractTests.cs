namespace AimTrainer.Store.Tests;

public sealed class SqliteProjectionContractTests() : ProjectionContract(new SqliteTestRecord());
