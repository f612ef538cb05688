using AimTrainer.Domain;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class RoundTripTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task FindAsync_AfterReopening_GivesTheSameSetupAndDrill()
    {
        var setup = Setup();
        using (var record = new OpenRecord(_folder.Path))
        {
            await record.Store.CreateAsync(setup, Drill(), Cancel);
        }

        using var again = new OpenRecord(_folder.Path);
        var found = await again.Store.FindAsync("s1", Cancel);
        Assert.NotNull(found);
        Assert.Equal(Json(setup), Json(found.Setup));
        Assert.Equal(setup, found.Setup);
        Assert.Equal(Drill().Json, found.DrillJson);
        Assert.False(found.Ended);
    }

    [Fact]
    public async Task FindAsync_UnknownSession_IsNull()
    {
        using var record = new OpenRecord(_folder.Path);
        Assert.Null(await record.Store.FindAsync("nobody", Cancel));
        Assert.Empty(await LogAsync(record.Store, "nobody"));
    }

    [Fact]
    public async Task ReadLogAsync_AfterReopening_GivesTheSameBytes()
    {
        var graded = Graded(1, Shot());
        LogEntry[] entries =
        [
            Began(), Thrown(2, graded), Noted(3),
            new(4, new SessionInput.VoidShot(Start, 1, "foul"), [new SessionEvent.ShotVoided(1, "foul")]),
            new(5, new SessionInput.ClockTick(Start.AddTicks(1)), [new SessionEvent.SessionPaused()]),
            Ended(6),
        ];
        using (var record = new OpenRecord(_folder.Path))
        {
            await record.Store.CreateAsync(Setup(), Drill(), Cancel);
            foreach (var entry in entries)
            {
                await record.Store.AppendAsync("s1", entry, Cancel);
            }
        }

        using var again = new OpenRecord(_folder.Path);
        var read = await LogAsync(again.Store, "s1");
        Assert.Equal(entries.Select(Json), read.Select(Json));
        Assert.Equal(entries, read);
        Assert.True((await again.Store.FindAsync("s1", Cancel))!.Ended);
    }

    [Fact]
    public async Task ReadLogAsync_MoreStepsThanOnePiece_GivesAllInOrder()
    {
        using var record = new OpenRecord(_folder.Path);
        await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await Task.WhenAll(Enumerable.Range(1, 1100).Select(i => record.Store.AppendAsync("s1", Noted(i), Cancel)));

        var read = await LogAsync(record.Store, "s1");
        Assert.Equal(Enumerable.Range(1, 1100).Select(i => (long)i), read.Select(entry => entry.Sequence));
    }

    [Fact]
    public async Task CreateAsync_SameDrillTwiceAndAnotherVersion_KeepsEachContentOnce()
    {
        using var record = new OpenRecord(_folder.Path);
        var changed = Drill(text: """{ "id": "arrow-narrowing", "changed": true }""");
        await record.Store.CreateAsync(Setup("s1"), Drill(), Cancel);
        await record.Store.CreateAsync(Setup("s2"), Drill(), Cancel);
        await record.Store.CreateAsync(Setup("s3", drill: changed), changed, Cancel);

        using var tables = record.Tables();
        Assert.Equal(
            new[] { Drill().Hash, changed.Hash }.Order(),
            (await tables.Drills.Select(drill => drill.Hash).ToListAsync(Cancel)).Order());
        Assert.Equal(changed.Json, (await record.Store.FindAsync("s3", Cancel))!.DrillJson);
    }

    [Fact]
    public async Task CreateAsync_IdThatIsTaken_IsRefusedAndTheFirstStays()
    {
        using var record = new OpenRecord(_folder.Path);
        await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        var refused = await Assert.ThrowsAsync<InvalidOperationException>(
            () => record.Store.CreateAsync(Setup(bowler: "Bo"), Drill(), Cancel));
        Assert.Contains("\"s1\"", refused.Message, StringComparison.Ordinal);
        Assert.Equal("Ann Lee", (await record.Store.FindAsync("s1", Cancel))!.Setup.Bowler);
        Assert.Null(await record.Store.FindBowlerAsync("Bo", Cancel));
    }

    [Fact]
    public async Task CreateAsync_SetupOfAnotherDrill_IsRefused()
    {
        using var record = new OpenRecord(_folder.Path);
        await Assert.ThrowsAsync<ArgumentException>(() => record.Store.CreateAsync(Setup() with { DrillHash = "00" }, Drill(), Cancel));
        Assert.Null(await record.Store.FindAsync("s1", Cancel));
    }

    [Fact]
    public async Task Open_EveryConnectionThatWrites_IsSetToKeepWhatItCommits()
    {
        var found = new List<object?>();
        using (var record = new OpenRecord(_folder.Path, connection =>
        {
            foreach (var pragma in (string[])["journal_mode", "synchronous", "foreign_keys", "busy_timeout"])
            {
                found.Add(Sqlite.SqliteDatabase.Scalar(connection, "PRAGMA " + pragma));
            }
        }))
        {
            await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        }

        // 2 is FULL. Source: SQLite documentation, "PRAGMA synchronous".
        Assert.Equal(["wal", 2L, 1L, 5000L], found);
    }

    [Fact]
    public async Task Dispose_AfterWriting_LeavesOnePlainFileThatAnotherProgramCanRead()
    {
        using (var record = new OpenRecord(_folder.Path))
        {
            await KeepAsync(record.Store, Setup(), Shot());
        }

        Assert.False(File.Exists(_folder.File("aimtrainer.db-wal")));
        using var plain = new SqliteConnection($"Data Source={_folder.File("aimtrainer.db")};Pooling=False");
        plain.Open();
        Assert.Equal("ok", Sqlite.SqliteDatabase.Scalar(plain, "PRAGMA integrity_check"));
        Assert.Null(Sqlite.SqliteDatabase.Scalar(plain, "PRAGMA foreign_key_check"));
        Assert.Equal(2L, Sqlite.SqliteDatabase.Scalar(plain, "SELECT count(*) FROM log_steps"));
    }

    public void Dispose() => _folder.Dispose();
}
