namespace AimTrainer.Store.Tests;

public sealed class SqliteAppendContractTests() : AppendContract(new SqliteTestRecord());
