using System.Diagnostics;
using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Benchmarks;

/// <summary>
/// 64 stations in one process, a shot every 1.5 s on each (20 times a lane's pace), spread evenly. A shot is sent when its time
/// has come, whether or not those before it are answered, so that a slow answer does not spare the next one its wait.
/// </summary>
internal static class StationsBenchmark
{
    private const int Stations = 64;
    private const double SecondsBetweenShots = 1.5;

    public static async Task RunAsync(int seconds)
    {
        using var place = new DataPlace();
        var (folder, store) = place.Open();
        using var held = folder;
        using var kept = store;
        using var stop = new CancellationTokenSource();
        var stations = Enumerable.Range(1, Stations).Select(number => new Station(number, store, TimeProvider.System)).ToList();
        var running = Task.WhenAll(stations.Select(station => station.RunAsync(stop.Token)));
        var shotsEach = (int)(seconds / SecondsBetweenShots);
        var drill = Drills.Blocks(Drills.Weighted, (shotsEach / 40) + 2);
        foreach (var station in stations)
        {
            await station.StartAsync(Drills.Setup(drill, station.Number, $"measured-{station.Number}"), drill, stop.Token);
            await station.FollowAsync(new SessionInput.Begin(DateTimeOffset.UnixEpoch), stop.Token);
        }

        // A few shots beforehand: a center's program does not meet its first shot with 64 lanes at full pace.
        var shots = ShotFile.Shots(shotsEach + 5);
        foreach (var station in stations)
        {
            foreach (var shot in shots.TakeLast(5))
            {
                await ThrowAsync(station, shot, stop.Token);
            }
        }

        var waits = await Task.WhenAll(await SendAsync(stations, shots, shotsEach, stop.Token));
        await stop.CancelAsync();
        await running.ContinueWith(_ => { }, TaskScheduler.Default);
        var spread = new Spread(waits);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"stations: {Stations}, a shot every {SecondsBetweenShots} s on each for {seconds} s, {waits.Length} shots; wait median {spread.Median:0.0} ms, "
            + $"99th percentile {spread.At(0.99):0.0} ms, longest {spread.At(1):0.0} ms, target 50 ms at the 99th; on {Machine.DiskOf(place.Folder)}"));
    }

    private static async Task<List<Task<double>>> SendAsync(List<Station> stations, List<Shot> shots, int shotsEach, CancellationToken stop)
    {
        var waits = new List<Task<double>>(Stations * shotsEach);
        var begun = Stopwatch.GetTimestamp();
        for (var i = 0; i < Stations * shotsEach; i++)
        {
            var due = TimeSpan.FromSeconds(i * SecondsBetweenShots / Stations) - Stopwatch.GetElapsedTime(begun);
            if (due > TimeSpan.Zero)
            {
                await Task.Delay(due, stop);
            }

            waits.Add(ThrowAsync(stations[i % Stations], shots[i / Stations], stop));
        }

        return waits;
    }

    private static async Task<double> ThrowAsync(Station station, Shot shot, CancellationToken stop)
    {
        var from = Stopwatch.GetTimestamp();
        var reply = await station.ThrowAsync(shot, stop);
        var wait = Stopwatch.GetElapsedTime(from).TotalMilliseconds;
        return reply is StationReply.Kept ? wait : throw new InvalidOperationException($"not kept: {reply}");
    }
}
