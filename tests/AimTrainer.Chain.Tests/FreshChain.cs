using AimTrainer.Store.Postgres;

namespace AimTrainer.Chain.Tests;

/// <summary>The server's one chain, emptied: a database for each test would take longer than the test.</summary>
internal static class FreshChain
{
    public const string Database = "chain";

    public static PostgresPlace Of(PostgresServer server)
    {
        var place = server.Place(Database);
        PostgresChain.Open(place, TimeProvider.System).Dispose();
        server.Run(Database, "TRUNCATE chain.centers, chain.people, chain.drills, chain.log_steps, chain.crossings RESTART IDENTITY CASCADE");
        return place;
    }
}
