using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class FaultTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task AppendAsync_NoRoomForMorePages_KeepsNothingOfTheStepAndWorksOnceThereIsRoom()
    {
        SqliteConnection? writer = null;
        using var record = new OpenRecord(_folder.Path, connection => writer = connection);
        await KeepAsync(record.Store, Setup(), Shot());
        // Waits until the writer is idle: nobody else uses its connection then.
        SqliteDatabase.Scalar(writer!, $"PRAGMA max_page_count = {SqliteDatabase.Number(writer!, "PRAGMA page_count") + 2}");

        var sequence = 3L;
        StoreUnavailableException? full = null;
        while (full is null && sequence < 500)
        {
            try
            {
                await record.Store.AppendAsync("s1", Thrown(sequence, Graded((int)sequence - 1, Shot())), Cancel);
                sequence++;
            }
            catch (StoreUnavailableException exception)
            {
                full = exception;
            }
        }

        Assert.NotNull(full);
        Assert.Contains(record.Folder.DatabaseFile, full.Message, StringComparison.Ordinal);
        Assert.Contains("the disk is full", full.Message, StringComparison.Ordinal);
        Assert.Contains("Free some space and try again", full.Message, StringComparison.Ordinal);
        await AssertHoldsAsync(record, (int)sequence - 1);

        SqliteDatabase.Scalar(writer!, "PRAGMA max_page_count = 100000");
        await record.Store.AppendAsync("s1", Thrown(sequence, Graded((int)sequence - 1, Shot())), Cancel);
        await AssertHoldsAsync(record, (int)sequence);
    }

    [Fact]
    public async Task AppendAsync_DiskReallyFull_KeepsNothingOfTheStepAndWorksOnceThereIsRoom()
    {
        using var disk = TinyDisk.OrSkip("2m");
        using var record = new OpenRecord(disk.Path);
        await KeepAsync(record.Store, Setup(), Shot());
        var ballast = disk.Fill();

        // What the log has room for in its last block may still go in; then nothing does, however often it is tried.
        var sequence = 3L;
        var refusals = 0;
        while (refusals < 3 && sequence < 500)
        {
            try
            {
                await record.Store.AppendAsync("s1", Thrown(sequence, Graded((int)sequence - 1, Shot())), Cancel);
                sequence++;
            }
            catch (StoreUnavailableException exception)
            {
                refusals++;
                Assert.Contains(record.Folder.DatabaseFile, exception.Message, StringComparison.Ordinal);
                Assert.Contains("Free some space", exception.Message, StringComparison.Ordinal);
            }
        }

        Assert.Equal(3, refusals);
        await Assert.ThrowsAsync<StoreUnavailableException>(() => record.Store.CreateAsync(Setup("s2"), Drill(), Cancel));

        File.Delete(ballast);
        await AssertHoldsAsync(record, (int)sequence - 1);
        await record.Store.AppendAsync("s1", Thrown(sequence, Graded((int)sequence - 1, Shot())), Cancel);
        await record.Store.CreateAsync(Setup("s2"), Drill(), Cancel);
        await AssertHoldsAsync(record, (int)sequence);
    }

    [Fact]
    public async Task Open_ReadOnlyDisk_SaysSoAndTheRecordStaysAsItWas()
    {
        using var disk = TinyDisk.OrSkip("4m");
        using (var record = new OpenRecord(disk.Path))
        {
            await KeepAsync(record.Store, Setup(), Shot());
        }

        disk.ReadOnly(true);
        var refused = Assert.Throws<StoreUnavailableException>(() => DataFolder.Open(disk.Path));
        Assert.Contains(disk.Path, refused.Message, StringComparison.Ordinal);
        Assert.Contains("--data DIR", refused.Message, StringComparison.Ordinal);

        disk.ReadOnly(false);
        using var again = new OpenRecord(disk.Path);
        await AssertHoldsAsync(again, 2);
    }

    [Fact]
    public async Task AppendAsync_ConnectionThatMayOnlyRead_SaysSoAndKeepsNothing()
    {
        SqliteConnection? writer = null;
        using var record = new OpenRecord(_folder.Path, connection => writer = connection);
        await KeepAsync(record.Store, Setup(), Shot());

        SqliteDatabase.Execute(writer!, "PRAGMA query_only = ON");
        var refused = await Assert.ThrowsAsync<StoreUnavailableException>(() => record.Store.AppendAsync("s1", Noted(3), Cancel));
        Assert.Contains("read-only", refused.Message, StringComparison.Ordinal);
        await AssertHoldsAsync(record, 2);

        SqliteDatabase.Execute(writer!, "PRAGMA query_only = OFF");
        await record.Store.AppendAsync("s1", Noted(3), Cancel);
        await AssertHoldsAsync(record, 3);
    }

    [Fact]
    public async Task AppendAsync_ConnectionFailsTwiceInARow_GoesOnWithAFreshOne()
    {
        var opened = new List<SqliteConnection>();
        using var record = new OpenRecord(_folder.Path, opened.Add);
        await KeepAsync(record.Store, Setup(), Shot());
        SqliteDatabase.Execute(opened[0], "PRAGMA query_only = ON");

        await Assert.ThrowsAsync<StoreUnavailableException>(() => record.Store.AppendAsync("s1", Noted(3), Cancel));
        await Assert.ThrowsAsync<StoreUnavailableException>(() => record.Store.AppendAsync("s1", Noted(3), Cancel));
        await record.Store.AppendAsync("s1", Noted(3), Cancel);
        Assert.Equal(2, opened.Count);
        await AssertHoldsAsync(record, 3);
    }

    [Fact]
    public async Task AppendAsync_WholeGroupFails_EverySenderIsToldAndNothingIsKept()
    {
        SqliteConnection? writer = null;
        using var record = new OpenRecord(_folder.Path, connection => writer = connection);
        for (var session = 0; session < 8; session++)
        {
            await record.Store.CreateAsync(Setup($"s{session}"), Drill(), Cancel);
        }

        SqliteDatabase.Execute(writer!, "PRAGMA query_only = ON");
        var steps = Enumerable.Range(0, 8).Select(session => record.Store.AppendAsync($"s{session}", Noted(1), Cancel)).ToList();
        foreach (var step in steps)
        {
            await Assert.ThrowsAsync<StoreUnavailableException>(() => step);
        }

        using var tables = record.Tables();
        Assert.Equal(0, await tables.LogSteps.CountAsync(Cancel));
    }

    [Fact]
    public async Task Open_DamagedFile_SaysSoAndLeavesIt()
    {
        byte[] rubbish = [.. Enumerable.Range(0, 9000).Select(i => (byte)(i * 7))];
        await File.WriteAllBytesAsync(_folder.File("aimtrainer.db"), rubbish, Cancel);
        var refused = Assert.Throws<StoreUnavailableException>(() => new OpenRecord(_folder.Path));
        Assert.Contains("not a database", refused.Message, StringComparison.Ordinal);
        Assert.Contains("aimtrainer restore", refused.Message, StringComparison.Ordinal);
        Assert.Equal(rubbish, await File.ReadAllBytesAsync(_folder.File("aimtrainer.db"), Cancel));
    }

    [Fact]
    public async Task ReadLogAsync_StepThatIsNotReadable_SaysWhichFile()
    {
        using var record = new OpenRecord(_folder.Path);
        await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await record.Store.AppendAsync("s1", Noted(1), Cancel);
        using (var other = SqliteDatabase.OpenForWriting(record.Folder.DatabaseFile))
        {
            SqliteDatabase.Execute(other, """UPDATE log_steps SET input_json = '{"kind":"dance"}'""");
        }

        var refused = await Assert.ThrowsAsync<StoreUnavailableException>(() => LogAsync(record.Store, "s1"));
        Assert.Contains(record.Folder.DatabaseFile, refused.Message, StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Dispose();

    /// <summary>The log, the shots and the totals of session s1 agree on how far it has come; each step after the first is a shot or a note.</summary>
    private static async Task AssertHoldsAsync(OpenRecord record, int steps)
    {
        var log = await LogAsync(record.Store, "s1");
        Assert.Equal(Enumerable.Range(1, steps).Select(i => (long)i), log.Select(entry => entry.Sequence));
        var shots = log.Count(entry => entry.Input is SessionInput.ShotThrown);
        using var tables = record.Tables();
        Assert.Equal(shots, await tables.GradedShots.CountAsync(Cancel));
        Assert.Equal(shots, (await tables.Sessions.SingleAsync(session => session.Id == "s1", Cancel)).Shots);
        Assert.Equal("ok", SqliteDatabase.Scalar((SqliteConnection)tables.Database.GetDbConnection(), "PRAGMA integrity_check"));
    }
}
