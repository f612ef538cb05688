using AimTrainer.Store.Sqlite;
using Microsoft.EntityFrameworkCore;
using SQLitePCL;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class AppendTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly OpenRecord _record;

    public AppendTests() => _record = new OpenRecord(_folder.Path);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(-1)]
    public async Task AppendAsync_NotTheNextStep_IsRefusedAndNothingKept(long sequence)
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await _record.Store.AppendAsync("s1", Noted(1), Cancel);

        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => _record.Store.AppendAsync("s1", Noted(sequence), Cancel));
        Assert.Contains("the next one, which is 2", refused.Message, StringComparison.Ordinal);
        await _record.Store.AppendAsync("s1", Noted(2), Cancel);
        Assert.Equal([1L, 2L], (await LogAsync(_record.Store, "s1")).Select(entry => entry.Sequence));
    }

    [Fact]
    public async Task AppendAsync_UnknownSession_IsRefused()
    {
        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => _record.Store.AppendAsync("s9", Noted(1), Cancel));
        Assert.Contains("s9", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AppendAsync_AfterReopening_GoesOnFromTheLastStep()
    {
        await KeepAsync(_record.Store, Setup(), Shot());
        _record.Dispose();
        using var again = new OpenRecord(_folder.Path);

        await Assert.ThrowsAsync<InvalidOperationException>(() => again.Store.AppendAsync("s1", Noted(2), Cancel));
        await again.Store.AppendAsync("s1", Thrown(3, Graded(2, Shot())), Cancel);

        using var tables = again.Tables();
        Assert.Equal(["second arrow", "second arrow"], await tables.GradedShots.Select(shot => shot.BlockName).ToListAsync(Cancel));
    }

    [Fact]
    public async Task AppendAsync_ManySessionsAtOnce_KeepsEachInOrder()
    {
        const int Sessions = 24, Steps = 25;
        for (var session = 0; session < Sessions; session++)
        {
            await _record.Store.CreateAsync(Setup($"s{session}", $"bowler {session % 5}"), Drill(), Cancel);
        }

        await Task.WhenAll(Enumerable.Range(0, Sessions).Select(session => Task.Run(
            async () =>
            {
                await _record.Store.AppendAsync($"s{session}", Began(), Cancel);
                for (var step = 2; step <= Steps; step++)
                {
                    await _record.Store.AppendAsync($"s{session}", Thrown(step, Graded(step - 1, Shot())), Cancel);
                }
            },
            Cancel)));

        for (var session = 0; session < Sessions; session++)
        {
            var log = await LogAsync(_record.Store, $"s{session}");
            Assert.Equal(Enumerable.Range(1, Steps).Select(i => (long)i), log.Select(entry => entry.Sequence));
        }

        using var tables = _record.Tables();
        Assert.Equal(Sessions * (Steps - 1), await tables.GradedShots.CountAsync(Cancel));
        Assert.Equal(Sessions * (Steps - 1) * 2, await tables.ShotTargets.CountAsync(Cancel));
        Assert.All(await tables.Sessions.ToListAsync(Cancel), session => Assert.Equal(Steps - 1, session.Shots));
    }

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
    public async Task AppendAsync_OneStepOfManyRefused_KeepsTheOthers()
    {
        for (var session = 0; session < 20; session++)
        {
            await _record.Store.CreateAsync(Setup($"s{session}"), Drill(), Cancel);
            await _record.Store.AppendAsync($"s{session}", Began(), Cancel);
            await _record.Store.AppendAsync($"s{session}", Thrown(2, Graded(1, Shot())), Cancel);
        }

        // Session 7 gives a shot number twice, which only the database finds; session 11 leaves a step out.
        var kept = Enumerable.Range(0, 20).Select(session => _record.Store.AppendAsync(
            $"s{session}", Thrown(session == 11 ? 4 : 3, Graded(session == 7 ? 1 : 2, Shot())), Cancel)).ToList();
        await Assert.ThrowsAsync<InvalidOperationException>(() => kept[7]);
        await Assert.ThrowsAsync<InvalidOperationException>(() => kept[11]);
        for (var session = 0; session < 20; session++)
        {
            if (session is not 7 and not 11)
            {
                await kept[session];
            }

            Assert.Equal(session is 7 or 11 ? 2 : 3, (await LogAsync(_record.Store, $"s{session}")).Count);
        }

        await _record.Store.AppendAsync("s7", Thrown(3, Graded(2, Shot())), Cancel);
    }

    [Fact]
    public async Task AppendAsync_ManyStepsOfOneSessionWithoutWaiting_KeepsAllInOrder()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await Task.WhenAll(Enumerable.Range(1, 3000).Select(i => _record.Store.AppendAsync("s1", Noted(i), Cancel)));
        Assert.Equal(3000, (await LogAsync(_record.Store, "s1")).Count);
    }

    [Fact]
    public async Task AppendAsync_AlreadyCancelled_KeepsNothing()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => _record.Store.AppendAsync("s1", Noted(1), new CancellationToken(true)));
        Assert.Empty(await LogAsync(_record.Store, "s1"));
    }

    [Fact]
    public async Task AppendAsync_AfterDispose_Throws()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        _record.Store.Dispose();
        await Assert.ThrowsAsync<ObjectDisposedException>(() => _record.Store.AppendAsync("s1", Noted(1), Cancel));
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
