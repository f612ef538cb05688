namespace AimTrainer.Store.Tests;

public sealed class SqliteListingContractTests() : ListingContract(new SqliteTestRecord());
