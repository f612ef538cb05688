using System.Diagnostics;
using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using AimTrainer.Store;
using AimTrainer.Store.Postgres;
using AimTrainer.Store.Sqlite;
using AimTrainer.Store.Tests;

namespace AimTrainer.Benchmarks;

/// <summary>
/// What a shot costs on its way from a center's record to a chain's, as centers grow: sent together after an outage, and each one alone
/// as it is thrown. Centers, the chain's host and PostgreSQL share this machine.
/// </summary>
internal static class SyncBenchmark
{
    private const int Sessions = 10, ShotsASession = 60, LiveShots = 20, MostAgain = 5;

    public static async Task RunAsync()
    {
        using var server = new PostgresServer();

        // Not told: the runtime compiles what is hot, and many centers heat other things than one.
        await RunAsync(server, 20);
        foreach (var centers in (int[])[1, 5, 20])
        {
            Console.WriteLine(await RunAsync(server, centers));
        }
    }

    private static async Task<string> RunAsync(PostgresServer server, int count)
    {
        using var chain = PostgresChain.Open(server.Place("sync_" + Guid.NewGuid().ToString("N")[..8]), TimeProvider.System);
        await using var host = await ChainHost.OpenAsync(chain, "http://127.0.0.1:0", CancellationToken.None);
        var centers = new List<Center>();
        for (var i = 0; i < count; i++)
        {
            var center = new Center((await chain.AddCenterAsync($"center {i}", CancellationToken.None))!, new Uri(host.Addresses.First()));
            await center.FillAsync();
            centers.Add(center);
        }

        var (together, cpu) = await MeasureAsync(() => Task.WhenAll(centers.Select(center => center.SendAsync())));
        var shots = count * Sessions * ShotsASession;
        var alone = new List<double>();
        for (var i = 0; i < LiveShots; i++)
        {
            await Task.WhenAll(centers.Select(center => center.ThrowAsync()));
            alone.Add((await MeasureAsync(() => Task.WhenAll(centers.Select(center => center.SendAsync())))).Elapsed.TotalMilliseconds / count);
        }

        var again = centers.Sum(center => center.Again);
        centers.ForEach(center => center.Dispose());
        return string.Create(
            CultureInfo.InvariantCulture,
            $"sync: {count} centers: {shots} shots together {together.TotalMilliseconds / shots:0.00} ms a shot ({shots / together.TotalSeconds:0} a second, "
            + $"{cpu.TotalMilliseconds / shots:0.00} ms of processor in centers and host); one at a time, all centers at once: median {new Spread(alone).Median:0.0} ms a shot; sent again because the chain did not answer: {again}");
    }

    private static async Task<(TimeSpan Elapsed, TimeSpan Cpu)> MeasureAsync(Func<Task> work)
    {
        using var process = Process.GetCurrentProcess();
        var (from, cpu) = (Stopwatch.GetTimestamp(), process.TotalProcessorTime);
        await work();
        process.Refresh();
        return (Stopwatch.GetElapsedTime(from), process.TotalProcessorTime - cpu);
    }

    private sealed class Center : IDisposable
    {
        private readonly DataPlace _place = new();
        private readonly DataFolder _folder;
        private readonly SqliteSessionStore _store;
        private readonly HttpChainLink _link;
        private readonly CenterSync _sync;
        private readonly CancellationTokenSource _stop = new();
        private readonly Station _station;
        private readonly IReadOnlyList<Shot> _shots = ShotFile.Shots(ShotsASession + LiveShots);
        private int _thrown;

        public Center(string token, Uri address)
        {
            (_folder, _store) = _place.Open();
            _link = new HttpChainLink(address, token, TimeSpan.FromSeconds(30));
            _sync = new CenterSync(_store, _link, new CenterFiles(_place.Folder), new RecordErasure(_store, _place.Folder, TimeProvider.System), TimeProvider.System);
            _station = new Station(1, _store, TimeProvider.System);
            _ = _station.RunAsync(_stop.Token);
        }

        public async Task FillAsync()
        {
            for (var session = 0; session < Sessions; session++)
            {
                var drill = Drills.Blocks(Drills.Weighted, 4);
                await _station.StartAsync(Drills.Setup(drill, 1, $"s{session}"), drill, CancellationToken.None);
                await _station.FollowAsync(new SessionInput.Begin(DateTimeOffset.UnixEpoch), CancellationToken.None);
                _thrown = 0;
                for (var i = 0; i < ShotsASession; i++)
                {
                    await ThrowAsync();
                }

                if (session < Sessions - 1)
                {
                    await _station.FollowAsync(new SessionInput.End(DateTimeOffset.UnixEpoch, "done"), CancellationToken.None);
                }
            }
        }

        public Task ThrowAsync() => _station.ThrowAsync(_shots[_thrown++], CancellationToken.None);

        /// <summary>How often the chain was not reached and was asked again, as a center's host does.</summary>
        public int Again { get; private set; }

        public async Task SendAsync()
        {
            for (var state = await _sync.RunAsync(CancellationToken.None); !state.IsComplete; state = await _sync.RunAsync(CancellationToken.None))
            {
                if (state.SetAside.Count > 0 || ++Again > MostAgain)
                {
                    throw new InvalidOperationException($"{state.Error} {string.Join("; ", state.SetAside)}");
                }

                await Console.Error.WriteLineAsync(state.Error);
            }
        }

        public void Dispose()
        {
            _stop.Cancel();
            _link.Dispose();
            _store.Dispose();
            _folder.Dispose();
            _place.Dispose();
            _stop.Dispose();
        }
    }
}
