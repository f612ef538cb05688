using AimTrainer.Store.Sqlite;
using Microsoft.EntityFrameworkCore;
using SQLitePCL;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class SqliteAppendTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly OpenRecord _record;

    public SqliteAppendTests() => _record = new OpenRecord(_folder.Path);

    [Fact]
    public async Task AppendAsync_ManyWaitingAtOnce_ShareOneTransaction()
    {
        using var folder = new TemporaryFolder();
        var commits = 0;
        using var record = new OpenRecord(folder.Path, connection => raw.sqlite3_commit_hook(
            connection.Handle,
            _ =>
            {
                commits++;
                return 0;
            },
            null));
        for (var session = 0; session < 50; session++)
        {
            await record.Store.CreateAsync(Setup($"s{session}"), Drill(), Cancel);
        }

        // While another connection keeps the writer out, all 50 line up; the writer may have picked up the first few alone.
        using var other = SqliteDatabase.OpenForWriting(record.Folder.DatabaseFile);
        SqliteDatabase.Execute(other, "BEGIN IMMEDIATE");
        commits = 0;
        var steps = Enumerable.Range(0, 50).Select(session => record.Store.AppendAsync($"s{session}", Noted(1), Cancel)).ToList();
        SqliteDatabase.Execute(other, "COMMIT");
        await Task.WhenAll(steps);
        Assert.InRange(commits, 1, 2);
    }

    [Fact]
    public async Task Log_CopiedWithoutClosing_HoldsEverythingAcknowledged()
    {
        // As after a kill: the files as they lie at that moment, the log not yet moved into the database.
        await KeepAsync(_record.Store, Setup(), [.. Enumerable.Range(0, 40).Select(i => Shot(9 + (i / 20.0)))]);
        using var copy = new TemporaryFolder();
        Assert.True(new FileInfo(_folder.File("aimtrainer.db-wal")).Length > 0);
        foreach (var name in (string[])["aimtrainer.db", "aimtrainer.db-wal"])
        {
            File.Copy(_folder.File(name), copy.File(name));
        }

        using var again = new OpenRecord(copy.Path);
        Assert.Equal((await LogAsync(_record.Store, "s1")).Select(Json), (await LogAsync(again.Store, "s1")).Select(Json));
        Assert.Equal(41, (await LogAsync(again.Store, "s1")).Count);
        await again.Store.AppendAsync("s1", Thrown(42, Graded(41, Shot())), Cancel);
    }

    [Fact]
    public async Task Log_CutShortInTheLastTransaction_HoldsAllBeforeIt()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await _record.Store.AppendAsync("s1", Noted(1), Cancel);
        var whole = new FileInfo(_folder.File("aimtrainer.db-wal")).Length;
        await _record.Store.AppendAsync("s1", Noted(2), Cancel);
        Assert.True(new FileInfo(_folder.File("aimtrainer.db-wal")).Length > whole);

        using var copy = new TemporaryFolder();
        File.Copy(_folder.File("aimtrainer.db"), copy.File("aimtrainer.db"));
        File.WriteAllBytes(copy.File("aimtrainer.db-wal"), File.ReadAllBytes(_folder.File("aimtrainer.db-wal"))[..(int)(whole + 100)]);

        using var again = new OpenRecord(copy.Path);
        Assert.Equal([1L], (await LogAsync(again.Store, "s1")).Select(entry => entry.Sequence));
        await again.Store.AppendAsync("s1", Noted(2), Cancel);
    }

    public void Dispose()
    {
        _record.Dispose();
        _folder.Dispose();
    }
}
