using System.Diagnostics;
using System.Globalization;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Benchmarks;

/// <summary>
/// 16 stations in one process, a shot every 1.5 s on each, while two windows (projector and overhead screen) show the first of them:
/// from the moment that its step is on the disk, so before its snapshot is made, to the submitted frames of both windows. Needs a
/// display: run it under <c>xvfb-run -a</c>, whose swaps wait for no refresh, so that the wait for one is not in the figure.
/// </summary>
internal static class DisplayBenchmark
{
    private const int Stations = 16;
    private const double SecondsBetweenShots = 1.5;
    private const double RefreshMilliseconds = 1000 / 60.0;

    public static Task RunAsync(int seconds)
    {
        var start = WindowSystem.Start();
        if (start.System is not { } system)
        {
            Console.WriteLine($"display: not measured, {start.Problem}; start it under xvfb-run -a");
            return Task.CompletedTask;
        }

        using (system)
        {
            using var loop = new DisplayLoop(system, TimeProvider.System, _ => { });
            using var stop = new CancellationTokenSource();
            using var place = new DataPlace();
            var (folder, inner) = place.Open();
            using var held = folder;
            using var kept = inner;
            var store = new StampingStore(inner, SessionId(1));
            var stations = Enumerable.Range(1, Stations).Select(number => new Station(number, store, TimeProvider.System)).ToList();
            var slot = new NewsSlot(new DisplayNews(SessionSnapshot.Idle(1), null), () => loop.Wake(store.KeptAt));
            var contents = DisplayContents.Of(new DisplayMaps(place.Folder, 1, _ => { }), ThemeLibrary.Default, TimeProvider.System);
            foreach (var kind in (DisplayKind[])[DisplayKind.Overhead, DisplayKind.Projector])
            {
                var wish = new DisplayWish(kind, null, true);
                if (loop.Open(new WindowWish { Title = wish.Title }, contents(wish, slot)) is { } problem)
                {
                    Console.WriteLine($"display: not measured, {problem}");
                    return Task.CompletedTask;
                }
            }

            // The loop keeps the thread that opened the windows; the stations have the others.
            var running = Task.Run(() => ThrowAsync(stations, slot, seconds, stop));
            loop.Run(stop.Token);
            running.GetAwaiter().GetResult();
            Report(loop.Statistics, seconds);
        }

        return Task.CompletedTask;
    }

    private static async Task ThrowAsync(List<Station> stations, NewsSlot slot, int seconds, CancellationTokenSource stop)
    {
        var running = Task.WhenAll(stations.Select(station => station.RunAsync(stop.Token)));
        var shotsEach = (int)(seconds / SecondsBetweenShots);
        var drill = Drills.Blocks(Drills.Weighted, (shotsEach / 40) + 2);
        foreach (var station in stations)
        {
            await station.StartAsync(Drills.Setup(drill, station.Number, SessionId(station.Number)), drill, stop.Token);
            await station.FollowAsync(new SessionInput.Begin(DateTimeOffset.UnixEpoch), stop.Token);
        }

        var watching = WatchAsync(stations[0], slot, stop.Token);
        var shots = ShotFile.Shots(shotsEach);
        var begun = Stopwatch.GetTimestamp();
        for (var i = 0; i < Stations * shotsEach; i++)
        {
            var due = TimeSpan.FromSeconds(i * SecondsBetweenShots / Stations) - Stopwatch.GetElapsedTime(begun);
            await Task.Delay(due > TimeSpan.Zero ? due : TimeSpan.Zero, stop.Token);
            await stations[i % Stations].ThrowAsync(shots[i / Stations], stop.Token);
        }

        await stop.CancelAsync();
        await Task.WhenAll(running, watching).ContinueWith(_ => { }, TaskScheduler.Default);
    }

    private static async Task WatchAsync(Station station, NewsSlot slot, CancellationToken stop)
    {
        await foreach (var snapshot in station.WatchAsync(stop))
        {
            slot.Put(new DisplayNews(snapshot, null));
        }
    }

    private static void Report(FrameStatistics statistics, int seconds)
    {
        // The first frames compile what later ones run.
        var waits = new Spread(statistics.NewsToSubmitted().Skip(5).Select(wait => wait.TotalMilliseconds));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"display: {Stations} stations, a shot every {SecondsBetweenShots} s on each for {seconds} s, two windows of 1280x720 at most; step on disk to both frames submitted: "
            + $"median {waits.Median:0.0} ms, 95th percentile {waits.At(0.95):0.0} ms, longest {waits.At(1):0.0} ms, target {RefreshMilliseconds:0.0} ms (one refresh at 60 Hz)"));
    }

    private static string SessionId(int station) => $"measured-{station}";

    /// <summary>Remembers when the last step of one session was on the disk.</summary>
    private sealed class StampingStore(ISessionStore inner, string sessionId) : ISessionStore
    {
        private long _keptAt;

        public long KeptAt => Interlocked.Read(ref _keptAt);

        public async Task AppendAsync(string sessionIdOfStep, LogEntry entry, CancellationToken cancellationToken)
        {
            await inner.AppendAsync(sessionIdOfStep, entry, cancellationToken);
            if (sessionIdOfStep == sessionId)
            {
                Interlocked.Exchange(ref _keptAt, TimeProvider.System.GetTimestamp());
            }
        }

        public Task CreateAsync(SessionSetup setup, DrillSource drill, CancellationToken cancellationToken) => inner.CreateAsync(setup, drill, cancellationToken);

        public Task<StoredSession?> FindAsync(string sessionId, CancellationToken cancellationToken) => inner.FindAsync(sessionId, cancellationToken);

        public IAsyncEnumerable<LogEntry> ReadLogAsync(string sessionId, long after, CancellationToken cancellationToken) =>
            inner.ReadLogAsync(sessionId, after, cancellationToken);

        public Task<ValueList<SessionListing>> ListAsync(SessionFilter filter, CancellationToken cancellationToken) => inner.ListAsync(filter, cancellationToken);

        public Task<BowlerRecord?> FindBowlerAsync(string name, CancellationToken cancellationToken) => inner.FindBowlerAsync(name, cancellationToken);

        public Task<ValueList<BowlerListing>> ListBowlersAsync(int most, CancellationToken cancellationToken) => inner.ListBowlersAsync(most, cancellationToken);
    }
}
