using AimTrainer.Sessions;
using AimTrainer.Store.Postgres;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresSchemaTests(PostgresServer server)
{
    public static TheoryData<string> Earlier() => new(["0", .. PostgresSchema.Known<RecordContext>()]);

    [Fact]
    public void Model_AsWritten_IsThatOfTheMigrations()
    {
        using var context = PostgresDatabase.ContextOver(new NpgsqlConnection("Host=none"), owns: true);
        Assert.False(context.Database.HasPendingModelChanges(), "run dotnet-ef migrations add, see docs/store.md");
        Assert.Equal(context.Database.GetMigrations(), PostgresSchema.Known<RecordContext>());
    }

    [Theory]
    [MemberData(nameof(Earlier))]
    public async Task Open_RecordOfEachEarlierVersion_IsBroughtUpToDate(string version)
    {
        var database = Fresh();
        using (var context = PostgresDatabase.ContextOver(server.Connect(database), owns: true))
        {
            await context.GetService<IMigrator>().MigrateAsync(version, Cancel);
        }

        using var store = PostgresSessionStore.Open(server.Place(database), TimeProvider.System);
        await KeepAsync(store, Setup(), Shot());
        Assert.Equal(2, (await LogAsync(store, "s1")).Count);
    }

    [Fact]
    public void Open_NewerRecord_IsRefusedAndLeftAsItIs()
    {
        var database = Fresh();
        PostgresSessionStore.Open(server.Place(database), TimeProvider.System).Dispose();
        server.Run(database, """INSERT INTO aimtrainer."__EFMigrationsHistory" VALUES ('29990101000000_FromTheFuture', '99.0.0')""");
        Assert.Contains("newer", Assert.Throws<StoreUnavailableException>(() => PostgresSessionStore.Open(server.Place(database), TimeProvider.System)).Message, StringComparison.Ordinal);
        Assert.Contains("29990101000000_FromTheFuture", Assert.Throws<StoreUnavailableException>(() => PostgresSessionStore.OpenForReading(server.Place(database))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_SchemaOfAnotherProgram_IsRefusedAndLeftAsItIs()
    {
        var database = Fresh();
        server.Run(database, "CREATE SCHEMA aimtrainer; CREATE TABLE aimtrainer.recipes (name text)");
        Assert.Contains("another program", Assert.Throws<StoreUnavailableException>(() => PostgresSessionStore.Open(server.Place(database), TimeProvider.System)).Message, StringComparison.Ordinal);
        Assert.Equal(1, server.Ask<long>(database, "SELECT count(*) FROM pg_tables WHERE schemaname = 'aimtrainer'"));
    }

    [Fact]
    public void OpenForReading_NoRecordYet_SaysSo()
    {
        var refused = Assert.Throws<StoreUnavailableException>(() => PostgresSessionStore.OpenForReading(server.Place(Fresh())));
        Assert.Contains("no record here yet", refused.Message, StringComparison.Ordinal);
    }

    private string Fresh()
    {
        var database = "fresh_" + Guid.NewGuid().ToString("N")[..12];
        server.Place(database);
        return database;
    }
}
