using System.Globalization;
using AimTrainer.Store.Postgres;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

/// <summary>
/// Centers and their chain as the programs that people run, each in a process of its own: <c>serve --chain</c> and <c>sync</c> at the centers,
/// <c>chain serve</c> at the chain. All are killed by SIGKILL in mid-work and started again, PostgreSQL too, while shots are thrown and lines
/// are bad. <c>tests/soak</c> runs it with twenty centers.
/// </summary>
[Collection(PostgresCollection.Name)]
public sealed class ProcessKillTests(PostgresServer server) : IDisposable
{
    private static readonly int Centers = Setting("AIMTRAINER_CENTERS", 3);
    private static readonly int Lives = Setting("AIMTRAINER_CENTER_LIVES", 2);
    private static readonly int Kills = Setting("AIMTRAINER_CHAIN_KILLS", 2);

    private readonly List<IDisposable> _open = [];
    private volatile bool _hostsKilled;

    [Fact]
    public async Task Processes_KilledWhileShotsAreThrown_LeaveBothSidesEqualEventByEvent()
    {
        var place = FreshChain.Of(server);
        using var adding = PostgresChain.Open(place, TimeProvider.System);
        var host = ServeChain();
        var port = (await host.AddressAsync(Cancel)).Port;
        var centers = new List<ProcessCenter>();
        var proxies = new List<ChaosProxy>();
        for (var i = 0; i < Centers; i++)
        {
            var name = $"center{i}";
            proxies.Add(new ChaosProxy(port, (ulong)(300 + i)));
            centers.Add(new ProcessCenter(name, (await adding.AddCenterAsync(name, Cancel))!, proxies[i], new Chance((ulong)(3000 + i))));
            _open.AddRange([proxies[i], centers[i]]);
        }

        var working = centers.Select(center => Task.Run(() => PlayAsync(center), Cancel)).ToList();
        var (chance, hostKills, databaseKills, inWriting) = (new Chance(9), 0, 0, 0);
        while (hostKills < Kills && !working.Exists(task => task.IsFaulted))
        {
            // Moments of the work and not of the clock, so that they are the same on a machine of any speed: while steps are on the line, or
            // while they are being written and not yet committed.
            var until = proxies.Sum(proxy => proxy.Heavy) + 1 + chance.Index(4);
            while (proxies.Sum(proxy => proxy.Heavy) < until && !working.Exists(task => task.IsFaulted))
            {
                await Task.Delay(TimeSpan.FromMilliseconds(1), Cancel);
            }

            if (hostKills == 0 || chance.Next() < 0.7)
            {
                inWriting += await IsWritingAsync(() => working.Exists(task => task.IsFaulted)) ? 1 : 0;
            }

            await host.KillAsync();
            if (hostKills++ % 2 == 1)
            {
                // As if its plug were pulled: the server recovers from its log.
                server.Kill();
                server.Start();
                databaseKills++;
            }

            host = ServeChain();
            port = (await host.AddressAsync(Cancel)).Port;
            proxies.ForEach(proxy => proxy.ServerPort = port);
        }

        _hostsKilled = true;
        await Task.WhenAll(working);
        proxies.ForEach(proxy => proxy.IsWell = true);
        var (steps, shots) = (0, 0);

        // Another one than before the database was killed: that one's connections are dead.
        using var chain = PostgresChain.Open(place, TimeProvider.System);
        foreach (var center in centers)
        {
            await center.SendAllAsync();
            var (own, totals) = await center.RecordAsync();
            Assert.Equal(own, await chain.EventsAsync(center.Name));
            Assert.Equal(totals, await chain.AskAsync(
                async tables => (await (
                    from session in tables.Sessions
                    join at in tables.Centers on session.CenterId equals at.Id
                    where at.Name == center.Name
                    select new { session.Id, session.Shots, session.Points }).ToListAsync(Cancel)).Select(session => (session.Id, session.Shots, session.Points)).Order().ToList(),
                Cancel));

            // What a center told its sensors is kept is at the chain, once.
            var there = own.Select(step => step.Input).ToList();
            Assert.All(center.Acknowledged, shot => Assert.Single(there, input => input.Contains($"\"{shot}\"", StringComparison.Ordinal)));
            steps += own.Count;
            shots += center.Acknowledged.Count;
        }

        // Kills and lines that did nothing would prove nothing.
        Assert.True(hostKills == Kills && databaseKills == Kills / 2 && centers.TrueForAll(center => center.Kills >= Lives), $"{hostKills} {databaseKills}");
        Assert.True(proxies.Sum(proxy => proxy.Cut) > 0 && inWriting > 0, "no connection was cut, or no kill came between writing and commit");
        Figures.Say(string.Create(
            CultureInfo.InvariantCulture,
            $"processes killed: {Centers} centers, {shots} shots acknowledged, {steps} steps; {centers.Sum(center => center.Kills)} processes of centers killed, {hostKills} of the chain's host ({inWriting} between writing and commit), "
            + $"{databaseKills} times its database; {proxies.Sum(proxy => proxy.Cut)} connections cut, {proxies.Sum(proxy => proxy.Doubled)} delivered twice: both sides equal, event by event"));
    }

    /// <summary>Nothing is left running, also when something failed.</summary>
    public void Dispose() => _open.ForEach(one => one.Dispose());

    /// <summary>Some lives of a center's host, each killed, and a sending between them that is killed as well: until the chain's kills are done too.</summary>
    private async Task PlayAsync(ProcessCenter center)
    {
        for (var life = 0; life < Lives || !_hostsKilled; life++)
        {
            await center.LiveAsync(fewest: 5);
            if (life % 2 == 0)
            {
                await center.SendAndKillAsync();
            }
        }
    }

    /// <summary>Waits until steps are being written to the chain's database and are not committed.</summary>
    private async Task<bool> IsWritingAsync(Func<bool> isOver)
    {
        await using var connection = server.Connect(FreshChain.Database);
        await using var ask = new NpgsqlCommand(
            """
            SELECT EXISTS (SELECT FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid() AND backend_xid IS NOT NULL
                AND query ~ '(INTO log_steps|INTO crossings|UPDATE sessions)')
            """,
            connection);
        while (!isOver())
        {
            if ((bool)(await ask.ExecuteScalarAsync(Cancel))!)
            {
                return true;
            }
        }

        return false;
    }

    private static int Setting(string name, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? value : usual;

    private ProgramProcess ServeChain()
    {
        var host = ProgramProcess.Start(server.Text(FreshChain.Database), "chain", "serve", "--urls", "http://127.0.0.1:0");
        _open.Add(host);
        return host;
    }
}
