namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresListingContractTests(PostgresServer server) : ListingContract(new PostgresTestRecord(server));
