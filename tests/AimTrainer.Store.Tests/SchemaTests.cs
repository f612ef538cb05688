using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class SchemaTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string> Earlier() => new(["0", .. RecordSchema.Known]);

    private string File => _folder.File("aimtrainer.db");

    [Fact]
    public void Model_AsWritten_IsThatOfTheMigrations()
    {
        using var context = SqliteDatabase.ContextOver(new SqliteConnection("Data Source=:memory:"), owns: true);
        Assert.False(context.Database.HasPendingModelChanges(), "run dotnet-ef migrations add, see docs/store.md");
        Assert.Equal(context.Database.GetMigrations(), RecordSchema.Known);
    }

    [Theory]
    [MemberData(nameof(Earlier))]
    public async Task Open_RecordOfEachEarlierVersion_IsBroughtUpToDate(string version)
    {
        using (var connection = SqliteDatabase.OpenForWriting(File))
        {
            SqliteDatabase.Execute(connection, $"PRAGMA application_id = {SqliteDatabase.ApplicationId}");
            using var context = SqliteDatabase.ContextOver(connection);
            await context.GetService<IMigrator>().MigrateAsync(version, Cancel);
        }

        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record.Store, Setup(), Shot());
        Assert.Equal(2, (await LogAsync(record.Store, "s1")).Count);
    }

    [Fact]
    public async Task Open_NewerRecord_IsRefusedAndLeftAsItIs()
    {
        using (var record = new OpenRecord(_folder.Path))
        {
            await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        }

        Change("INSERT INTO __EFMigrationsHistory VALUES ('29990101000000_FromTheFuture', '99.0.0')");
        var before = await System.IO.File.ReadAllBytesAsync(File, Cancel);

        var refused = Assert.Throws<StoreUnavailableException>(() => new OpenRecord(_folder.Path));
        Assert.Contains(File, refused.Message, StringComparison.Ordinal);
        Assert.Contains("29990101000000_FromTheFuture", refused.Message, StringComparison.Ordinal);
        Assert.Contains("newer", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, await System.IO.File.ReadAllBytesAsync(File, Cancel));
        Assert.Throws<StoreUnavailableException>(() => SqliteSessionStore.Open(DataFolder.OpenForReading(_folder.Path)));
    }

    [Fact]
    public async Task Open_DatabaseOfAnotherProgram_IsRefusedAndLeftAsItIs()
    {
        Change("CREATE TABLE recipes (name TEXT)");
        var before = await System.IO.File.ReadAllBytesAsync(File, Cancel);
        var refused = Assert.Throws<StoreUnavailableException>(() => new OpenRecord(_folder.Path));
        Assert.Contains("another program", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, await System.IO.File.ReadAllBytesAsync(File, Cancel));
    }

    [Fact]
    public async Task Open_EmptyFile_IsMadeARecord()
    {
        await System.IO.File.WriteAllBytesAsync(File, [], Cancel);
        using var record = new OpenRecord(_folder.Path);
        await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        Assert.NotNull(await record.Store.FindAsync("s1", Cancel));
    }

    [Fact]
    public async Task Open_KilledWhileItsTablesWereMade_MakesThemNow()
    {
        // EF's own mark of a migration under way, as a killed process leaves it.
        Change($"PRAGMA application_id = {SqliteDatabase.ApplicationId}");
        Change("""CREATE TABLE "__EFMigrationsLock" ("Id" INTEGER NOT NULL PRIMARY KEY, "Timestamp" TEXT NOT NULL)""");
        Change("""INSERT INTO "__EFMigrationsLock" VALUES (1, '2026-01-01')""");
        using var record = new OpenRecord(_folder.Path);
        await record.Store.CreateAsync(Setup(), Drill(), Cancel);
    }

    [Fact]
    public void Open_RecordWithoutTheLatestTables_ForReading_SaysWhatToDo()
    {
        Change($"PRAGMA application_id = {SqliteDatabase.ApplicationId}; CREATE TABLE anything (x)");
        var refused = Assert.Throws<StoreUnavailableException>(() => SqliteSessionStore.Open(DataFolder.OpenForReading(_folder.Path)));
        Assert.Contains("older", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_NewRecord_CarriesOurMark()
    {
        new OpenRecord(_folder.Path).Dispose();
        using var connection = SqliteDatabase.OpenForReading(File);
        Assert.Equal((long)SqliteDatabase.ApplicationId, SqliteDatabase.Scalar(connection, "PRAGMA application_id"));
    }

    public void Dispose() => _folder.Dispose();

    private void Change(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={File};Pooling=False");
        connection.Open();
        SqliteDatabase.Execute(connection, sql);
    }
}
