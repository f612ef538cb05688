namespace AimTrainer.Store.Tests;

public sealed class SqliteRoundTripContractTests() : RoundTripContract(new SqliteTestRecord());
