using System.Globalization;
using AimTrainer.Store;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

/// <summary>
/// Many centers send to one chain over bad lines while they go on throwing; centers, the chain's host and its database are killed at
/// random. At the end both sides are equal, event by event. <c>tests/soak</c> runs it with twenty centers and more of everything.
/// </summary>
[Collection(PostgresCollection.Name)]
public sealed class BadLineTests(PostgresServer server)
{
    private static readonly int Centers = Setting("AIMTRAINER_CENTERS", 6);
    private static readonly int Sessions = Setting("AIMTRAINER_CENTER_SESSIONS", 3);
    private static readonly int Steps = Setting("AIMTRAINER_CENTER_STEPS", 40);
    private static readonly int Kills = Setting("AIMTRAINER_CHAIN_KILLS", 3);

    [Fact]
    public async Task Sync_BadLinesAndKills_LeavesBothSidesEqualEventByEvent()
    {
        var place = FreshChain.Of(server);
        var chain = await ChainServer.OpenAsync(place);
        var centers = new List<TestCenter>();
        var proxies = new List<ChaosProxy>();
        for (var i = 0; i < Centers; i++)
        {
            var name = $"center {i}";
            centers.Add(new TestCenter(name, (await chain.Chain.AddCenterAsync(name, Cancel))!));
            proxies.Add(new ChaosProxy(chain.Address.Port, (ulong)(100 + i)));
        }

        var lives = 0;
        var working = centers.Select((center, i) => Task.Run(
            async () => Interlocked.Add(ref lives, await PlayAsync(center, proxies[i], new Chance((ulong)(1000 + i)))), Cancel)).ToList();
        var chance = new Chance(7);
        for (var kill = 0; kill < Kills && !working.TrueForAll(task => task.IsCompleted); kill++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(200 + (400 * chance.Next())), Cancel);
            if (kill % 3 == 1)
            {
                // As if its plug were pulled: the server recovers from its log.
                server.Kill();
                server.Start();
            }

            await chain.DisposeAsync();
            chain = await ChainServer.OpenAsync(place);
            proxies.ForEach(proxy => proxy.ServerPort = chain.Address.Port);
        }

        await Task.WhenAll(working);
        proxies.ForEach(proxy => proxy.IsWell = true);
        var steps = 0;
        for (var i = 0; i < Centers; i++)
        {
            using var link = centers[i].Link(proxies[i].Port);
            var state = await centers[i].Sync(link).RunAsync(Cancel);
            for (var again = 0; again < 20 && state.Error is not null; again++)
            {
                state = await centers[i].Sync(link).RunAsync(Cancel);
            }

            Assert.True(state.IsComplete, $"{state.Error} {string.Join("; ", state.SetAside)}");
            var own = await centers[i].EventsAsync();
            Assert.Equal(own, await chain.Chain.EventsAsync(centers[i].Name));
            Assert.Equal(Sessions * (Steps + 2), own.Count);
            steps += own.Count;
            var totals = (await centers[i].Store.ListAsync(new Sessions.SessionFilter(), Cancel)).Select(session => (session.SessionId, session.Shots, session.Points)).Order();
            Assert.Equal(totals, await chain.Chain.AskAsync(
                async tables => (await (
                    from session in tables.Sessions
                    join at in tables.Centers on session.CenterId equals at.Id
                    where at.Name == centers[i].Name
                    select new { session.Id, session.Shots, session.Points }).ToListAsync(Cancel)).Select(session => (session.Id, session.Shots, session.Points)).Order(),
                Cancel));
        }

        // Lines that were never cut would prove nothing.
        Assert.True(proxies.Sum(proxy => proxy.Cut) > 0 && proxies.Sum(proxy => proxy.Doubled) > 0 && lives > Centers);
        Figures.Say(string.Create(
            CultureInfo.InvariantCulture,
            $"chain over bad lines: {Centers} centers, {steps} steps; {proxies.Sum(proxy => proxy.Cut)} connections cut, {proxies.Sum(proxy => proxy.Doubled)} delivered twice, "
            + $"{lives - Centers} kills of centers, {Kills} of the chain's host, {(Kills + 1) / 3} of its database: both sides equal, event by event"));
        foreach (var proxy in proxies)
        {
            proxy.Dispose();
        }

        centers.ForEach(center => center.Dispose());
        await chain.DisposeAsync();
    }

    /// <summary>Throws all sessions of a center, a step here and a step there, while one host after the other sends them and is killed.</summary>
    /// <returns>How many hosts it took.</returns>
    private static async Task<int> PlayAsync(TestCenter center, ChaosProxy proxy, Chance chance)
    {
        var left = Enumerable.Range(0, Sessions).ToDictionary(session => $"s{session}", _ => Steps);
        foreach (var id in left.Keys)
        {
            await center.BeginAsync(id, $"bowler {chance.Index(4)}", station: 1 + chance.Index(8), at: Start.AddDays(20 * chance.Next()));
        }

        var lives = 0;
        while (left.Count > 0)
        {
            lives++;
            using var link = center.Link(proxy.Port);
            var sync = center.Sync(link);
            using var kill = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
            var sending = SendAsync(sync, kill.Token);
            var until = 5 + chance.Index(30);
            for (var i = 0; i < until && left.Count > 0; i++)
            {
                var id = left.Keys.ElementAt(chance.Index(left.Count));
                if (left[id]-- == 0)
                {
                    await center.EndAsync(id);
                    left.Remove(id);
                }
                else
                {
                    await center.StepAsync(id, chance);
                }

                await Task.Delay(TimeSpan.FromMilliseconds(4 * chance.Next()), Cancel);
            }

            // In the middle of whatever it does: the line drops, and what it knew is gone.
            await kill.CancelAsync();
            await sending;
            center.Restart();
        }

        return lives;
    }

    private static async Task SendAsync(CenterSync sync, CancellationToken cancellationToken)
    {
        try
        {
            while (true)
            {
                await sync.RunAsync(cancellationToken);
                await Task.Delay(TimeSpan.FromMilliseconds(10), cancellationToken);
            }
        }
        catch (OperationCanceledException)
        {
        }
    }

    private static int Setting(string name, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? value : usual;
}
