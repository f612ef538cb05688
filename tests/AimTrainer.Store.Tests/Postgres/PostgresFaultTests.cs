using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Store.Postgres;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

[Collection(PostgresCollection.Name)]
public sealed class PostgresFaultTests(PostgresServer server) : IDisposable
{
    private readonly PostgresTestRecord _record = new(server);

    [Fact]
    public async Task AppendAsync_ServerStoppedAndStarted_RefusesMeanwhileAndLosesNothing()
    {
        await KeepAsync(_record.Store, Setup(), Shot());
        server.Stop();
        try
        {
            for (var i = 0; i < 2; i++)
            {
                var refused = await Assert.ThrowsAsync<StoreUnavailableException>(() => _record.Store.AppendAsync("s1", Noted(3), Cancel));
                Assert.Contains("127.0.0.1", refused.Message, StringComparison.Ordinal);
                Assert.Contains("nothing", refused.Message, StringComparison.Ordinal);
                Assert.DoesNotContain(PostgresServer.Password, refused.ToString(), StringComparison.Ordinal);
            }

            await Assert.ThrowsAsync<StoreUnavailableException>(() => _record.Store.CreateAsync(Setup("s2"), Drill(), Cancel));
            await Assert.ThrowsAsync<StoreUnavailableException>(() => _record.Store.ListAsync(new SessionFilter(), Cancel));
        }
        finally
        {
            server.Start();
        }

        await _record.Store.AppendAsync("s1", Noted(3), Cancel);
        Assert.Equal([1L, 2L, 3L], (await LogAsync(_record.Store, "s1")).Select(entry => entry.Sequence));
        Assert.Null(await _record.Store.FindAsync("s2", Cancel));
    }

    [Fact]
    public async Task AppendAsync_AnswerToTheCommitLost_AsksTheServerAndIsKeptOnce()
    {
        _record.Dispose();
        using var proxy = new CuttingProxy(server.Port);
        using var store = PostgresSessionStore.Open(server.Place("contract", proxy.Port), TimeProvider.System);
        await KeepAsync(store, Setup(), Shot());
        proxy.CutAfter("COMMIT\0");
        await store.AppendAsync("s1", Thrown(3, Graded(2, Shot())), Cancel);
        await store.AppendAsync("s1", Noted(4), Cancel);
        Assert.Equal([1L, 2L, 3L, 4L], (await LogAsync(store, "s1")).Select(entry => entry.Sequence));
        Assert.Equal(2, (await store.ListAsync(new SessionFilter(), Cancel))[0].Shots);
    }

    [Fact]
    public async Task AppendAsync_LineCutInTheMiddleOfAStep_KeepsNothingOfItAndGoesOn()
    {
        _record.Dispose();
        using var proxy = new CuttingProxy(server.Port);
        using var store = PostgresSessionStore.Open(server.Place("contract", proxy.Port), TimeProvider.System);
        await KeepAsync(store, Setup(), Shot());
        proxy.CutAfter("note 3");
        await Assert.ThrowsAsync<StoreUnavailableException>(() => store.AppendAsync("s1", Noted(3), Cancel));
        await EventuallyAsync(() => store.AppendAsync("s1", Noted(3), Cancel));
        Assert.Equal([1L, 2L, 3L], (await LogAsync(store, "s1")).Select(entry => entry.Sequence));
    }

    [Fact]
    public async Task AppendAsync_KeptButNobodyCouldSaySo_IsTakenBackBeforeTheNext()
    {
        _record.Dispose();
        using var proxy = new CuttingProxy(server.Port);
        var place = server.Place("contract", proxy.Port);
        var database = new PostgresRecordDatabase(place, TimeProvider.System) { AsksFor = TimeSpan.FromMilliseconds(300) };
        using var store = PostgresSessionStore.OpenOver(database, place);
        await KeepAsync(store, Setup(), Shot(10), Shot(10));
        await store.AppendAsync("s1", new(4, new SessionInput.VoidShot(Start, 1, "foul"), [new SessionEvent.ShotVoided(1, "foul")]), Cancel);

        proxy.CutAfter("COMMIT\0", goesDown: true);
        await Assert.ThrowsAsync<StoreUnavailableException>(() => store.AppendAsync("s1", Thrown(5, Graded(3, Shot(14))), Cancel));
        Assert.Equal(5, server.Ask<long>("contract", "SELECT max(sequence) FROM aimtrainer.log_steps"));

        // It was kept, and its sender was told that it was not: another step takes its place.
        proxy.IsDown = false;
        await EventuallyAsync(() => store.AppendAsync("s1", Thrown(5, Graded(3, Shot(10))), Cancel));
        Assert.Equal(Json(Thrown(5, Graded(3, Shot(10)))), Json((await LogAsync(store, "s1"))[^1]));
        var listed = Assert.Single((await store.ListAsync(new SessionFilter(), Cancel)).AsEnumerable());
        Assert.Equal((2, 6), (listed.Shots, listed.Points));
        using var tables = _record.Tables();
        Assert.Equal([10.0, 10.0, 10.0], await tables.ShotTargets.Where(target => target.Position == 0).OrderBy(target => target.Number).Select(target => target.CrossingBoard!.Value).ToListAsync(Cancel));
        Assert.Equal(["foul", null, null], await tables.GradedShots.OrderBy(shot => shot.Number).Select(shot => shot.VoidReason).ToListAsync(Cancel));
    }

    [Fact]
    public async Task CreateAsync_KeptButNobodyCouldSaySo_IsTakenBack()
    {
        _record.Dispose();
        using var proxy = new CuttingProxy(server.Port);
        var place = server.Place("contract", proxy.Port);
        var database = new PostgresRecordDatabase(place, TimeProvider.System) { AsksFor = TimeSpan.FromMilliseconds(300) };
        using var store = PostgresSessionStore.OpenOver(database, place);
        await store.CreateAsync(Setup("s0"), Drill(), Cancel);
        proxy.CutAfter("COMMIT\0", goesDown: true);
        await Assert.ThrowsAsync<StoreUnavailableException>(() => store.CreateAsync(Setup(), Drill(), Cancel));
        proxy.IsDown = false;
        await EventuallyAsync(() => store.CreateAsync(Setup(), Drill(), Cancel));
        Assert.Equal(2, (await store.ListAsync(new SessionFilter(), Cancel)).Count);
    }

    [Fact]
    public void Open_WhileAnotherHoldsIt_IsRefusedWithItsAddress()
    {
        var refused = Assert.Throws<StoreUnavailableException>(() => PostgresSessionStore.Open(server.Place("contract"), TimeProvider.System));
        Assert.Contains("in use by another aimtrainer (from 127.0.0.1)", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task OpenForReading_BesideTheWriter_ReadsAndCannotWrite()
    {
        await KeepAsync(_record.Store, Setup(), Shot());
        using var reading = PostgresSessionStore.OpenForReading(server.Place("contract"));
        Assert.Single((await reading.ListAsync(new SessionFilter(), Cancel)).AsEnumerable());
        await Assert.ThrowsAsync<InvalidOperationException>(() => reading.AppendAsync("s1", Noted(3), Cancel));
    }

    [Theory]
    [InlineData("Password=wrong-secret", "does not let this user in")]
    [InlineData("Database=nowhere", "no such database")]
    [InlineData("Port=1", "cannot be reached")]
    public void Open_PlaceThatCannotBe_SaysWhatToDoAndNeverThePassword(string changed, string words)
    {
        var place = PostgresPlace.Read(server.Text("contract") + ";" + changed, out _)!;
        var refused = Assert.Throws<StoreUnavailableException>(() => PostgresSessionStore.Open(place, TimeProvider.System));
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", refused.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Open_ServerThatDoesNotFlush_IsRefused()
    {
        _record.Dispose();
        Set("off");
        try
        {
            var refused = Assert.Throws<StoreUnavailableException>(() => PostgresSessionStore.Open(server.Place("contract"), TimeProvider.System));
            Assert.Contains("fsync = off", refused.Message, StringComparison.Ordinal);
        }
        finally
        {
            Set("on");
        }
    }

    [Fact]
    public async Task AppendAsync_ManyWaitingAtOnce_ShareOneTransaction()
    {
        for (var session = 0; session < 50; session++)
        {
            await _record.Store.CreateAsync(Setup($"s{session}"), Drill(), Cancel);
        }

        // While another connection keeps the writer out, all 50 line up; the writer may have picked up the first few alone.
        using var other = server.Connect("contract");
        using var transaction = await other.BeginTransactionAsync(Cancel);
        using (var hold = other.CreateCommand())
        {
            hold.CommandText = "LOCK TABLE aimtrainer.log_steps IN EXCLUSIVE MODE";
            await hold.ExecuteNonQueryAsync(Cancel);
        }

        var steps = Enumerable.Range(0, 50).Select(session => _record.Store.AppendAsync($"s{session}", Noted(1), Cancel)).ToList();
        await transaction.CommitAsync(Cancel);
        await Task.WhenAll(steps);
        Assert.InRange(server.Ask<long>("contract", "SELECT count(DISTINCT xmin::text) FROM aimtrainer.log_steps"), 1, 2);
    }

    public void Dispose() => _record.Dispose();

    /// <summary>Tries again while the server still clears away a broken connection.</summary>
    private static async Task EventuallyAsync(Func<Task> work)
    {
        for (var i = 0; ; i++)
        {
            try
            {
                await work();
                return;
            }
            catch (StoreUnavailableException) when (i < 100)
            {
                await Task.Delay(50, Cancel);
            }
        }
    }

    private void Set(string fsync)
    {
        server.Run("postgres", $"ALTER SYSTEM SET fsync = {fsync}");
        server.Run("postgres", "SELECT pg_reload_conf()");
        for (var i = 0; i < 200 && server.Ask<string>("postgres", "SHOW fsync") != fsync; i++)
        {
            Task.Delay(20, Cancel).GetAwaiter().GetResult();
        }
    }
}
