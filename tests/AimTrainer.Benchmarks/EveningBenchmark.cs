using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Benchmarks;

/// <summary>
/// One evening of a center: 64 stations, 200 invented bowlers who take turns, three hours at sixty times the real pace, a display
/// elsewhere for each lane and the coach's page of all. Counts what was lost and what went to the wrong bowler, measures from a shot's
/// sending to the event at its display, and watches the host's memory and processor.
/// </summary>
internal static class EveningBenchmark
{
    private const int Stations = 64, Bowlers = 200, ShotsATurn = 10;
    private const double RealHours = 3, Pace = 60, RealSecondsBetweenShots = 30;

    public static async Task RunAsync(int seconds)
    {
        using var place = new DataPlace();
        List<(string Id, string Bowler, int Station, long Step, string Session, double Milliseconds)> shots;
        List<double> memory = [];
        double cores;
        TimeSpan took;
        using (var server = await WebProcess.StartAsync("AimTrainer.Benchmarks.dll", WebBenchmark.Server, place.Folder, Stations.ToString(CultureInfo.InvariantCulture)))
        {
            using var client = new HttpClient(new SocketsHttpHandler { UseCookies = false, MaxConnectionsPerServer = 1000 }) { BaseAddress = server.Address, Timeout = Timeout.InfiniteTimeSpan };
            await SendAsync(client, HttpMethod.Put, "/api/drills/measured", Drills.LongScript);
            using var stop = new CancellationTokenSource();
            var seen = new ConcurrentDictionary<(string Session, long Step), long>();
            var readers = Enumerable.Range(1, Stations).Select(station => ReadAsync(client, station, seen, stop.Token)).Append(ReadAllAsync(client, stop.Token)).ToList();
            var (used, begun) = (server.ProcessorTime, Stopwatch.GetTimestamp());
            var watching = WatchAsync(server, memory, stop.Token);
            var lanes = await Task.WhenAll(Enumerable.Range(1, Stations).Select(station => LaneAsync(client, station, begun, seconds)));
            took = Stopwatch.GetElapsedTime(begun);
            cores = (server.ProcessorTime - used) / took;
            await Task.Delay(TimeSpan.FromSeconds(1));
            await stop.CancelAsync();
            await Task.WhenAll(readers.Append(watching));
            shots = [.. lanes.SelectMany(lane => lane).Select(shot => (shot.Id, shot.Bowler, shot.Station, shot.Step, shot.Session,
                seen.TryGetValue((shot.Session, shot.Step), out var at) ? Stopwatch.GetElapsedTime(shot.Sent, at).TotalMilliseconds : double.PositiveInfinity))];
        }

        var (lost, wrong) = await CompareAsync(place, shots.ToDictionary(shot => shot.Id, shot => shot.Bowler));
        var times = new Spread(shots.Select(shot => shot.Milliseconds));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"evening: {Stations} stations, {Bowlers} bowlers, {seconds * Pace / 3600:0.0} h at {Pace:0} times the real pace ({took.TotalSeconds:0} s), {shots.Count} shots, lost {lost}, to the wrong bowler {wrong}, "
            + $"not at their display {shots.Count(shot => double.IsInfinity(shot.Milliseconds))}; sent to display event median {times.Median:0.0} ms, 99th percentile {times.At(0.99):0.0} ms, longest {times.At(1):0.0} ms, "
            + $"target 100 ms at the 99th; host's memory {memory[^1]:0} MiB at the end, growth over the last half {Growth(memory):+0.0%;-0.0%}, target 5 %; host {cores:0.0%} of a core; on {Machine.DiskOf(place.Folder)}"));
    }

    /// <summary>The whole evening: <see cref="RealHours"/> at <see cref="Pace"/>.</summary>
    public static int WholeSeconds => (int)(RealHours * 3600 / Pace);

    /// <summary>The slope of a straight line through the last half, over that half, against its mean.</summary>
    private static double Growth(List<double> memory)
    {
        var half = memory.Skip(memory.Count / 2).ToList();
        var (middle, mean) = ((half.Count - 1) / 2.0, half.Average());
        var slope = half.Select((value, i) => (i - middle) * (value - mean)).Sum() / half.Select((_, i) => (i - middle) * (i - middle)).Sum();
        return slope * (half.Count - 1) / mean;
    }

    private static async Task<List<(string Id, string Bowler, int Station, long Step, string Session, long Sent)>> LaneAsync(HttpClient client, int station, long begun, int seconds)
    {
        // 200 bowlers on 64 lanes: three or four each, one after the other, again and again.
        var mine = Enumerable.Range(0, Bowlers).Where(bowler => bowler % Stations == station - 1).Select(bowler => $"Invented {bowler}").ToList();
        var shots = new List<(string, string, int, long, string, long)>();
        var between = RealSecondsBetweenShots / Pace;
        var (number, session) = (0, "");
        while (true)
        {
            var bowler = mine[number / ShotsATurn % mine.Count];
            var due = TimeSpan.FromSeconds((number + ((double)station / Stations)) * between) - Stopwatch.GetElapsedTime(begun);
            if (Stopwatch.GetElapsedTime(begun).TotalSeconds >= seconds)
            {
                return shots;
            }

            if (due > TimeSpan.Zero)
            {
                await Task.Delay(due);
            }

            if (number % ShotsATurn == 0)
            {
                if (number > 0)
                {
                    await SendAsync(client, HttpMethod.Post, $"/api/stations/{station}/actions", """{"kind":"end","why":"next bowler"}""");
                }

                using var started = JsonDocument.Parse(await SendAsync(client, HttpMethod.Post, $"/api/stations/{station}/sessions", $$"""{"bowler":"{{bowler}}","drill":"measured"}"""));
                session = started.RootElement.GetProperty("sessionId").GetString()!;
                await SendAsync(client, HttpMethod.Post, $"/api/stations/{station}/actions", """{"kind":"begin"}""");
            }

            var id = $"{station}-{number}";
            var board = 8 + (number * 7 % 50 / 10.0);
            var sent = Stopwatch.GetTimestamp();
            using var answer = JsonDocument.Parse(await SendAsync(
                client, HttpMethod.Post, $"/api/stations/{station}/shots", string.Create(CultureInfo.InvariantCulture, $$"""{"id":"{{id}}","bowler":"{{bowler}}","arrowsBoard":{{board}},"speedMph":17.2,"speedAt":"release"}""")));
            shots.Add((id, bowler, station, answer.RootElement.GetProperty("sequence").GetInt64(), session, sent));
            number++;
        }
    }

    private static async Task<byte[]> SendAsync(HttpClient client, HttpMethod method, string path, string body)
    {
        using var request = new HttpRequestMessage(method, path) { Content = new StringContent(body, Encoding.UTF8, "application/json") };
        using var answer = await client.SendAsync(request);
        return answer.IsSuccessStatusCode ? await answer.Content.ReadAsByteArrayAsync()
            : throw new InvalidOperationException($"{path}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
    }

    /// <summary>A display of a lane: notes when each step of each session came.</summary>
    private static Task ReadAsync(HttpClient client, int station, ConcurrentDictionary<(string, long), long> seen, CancellationToken stop) => LinesAsync(
        client, $"/api/stations/{station}/displays/overhead?protocol={DisplayHello.Spoken}", line =>
        {
            const string Data = "data: {\"sessionId\"";
            if (line.StartsWith(Data, StringComparison.Ordinal))
            {
                var at = Stopwatch.GetTimestamp();
                var update = JsonSerializer.Deserialize<DisplayUpdate>(line.AsSpan("data: ".Length), DomainJson.Options)!;
                foreach (var step in update.Steps)
                {
                    seen.TryAdd((update.SessionId!, step.Sequence), at);
                }
            }
        }, stop);

    private static Task ReadAllAsync(HttpClient client, CancellationToken stop) => LinesAsync(client, "/api/stations/all/live", _ => { }, stop);

    private static async Task LinesAsync(HttpClient client, string path, Action<string> take, CancellationToken stop)
    {
        try
        {
            using var answer = await client.GetAsync(path, HttpCompletionOption.ResponseHeadersRead, stop);
            answer.EnsureSuccessStatusCode();
            using var reader = new StreamReader(await answer.Content.ReadAsStreamAsync(stop));
            while (await reader.ReadLineAsync(stop) is { } line)
            {
                take(line);
            }
        }
        catch (OperationCanceledException)
        {
            // The evening is over.
        }
    }

    private static async Task WatchAsync(WebProcess server, List<double> memory, CancellationToken stop)
    {
        try
        {
            while (true)
            {
                memory.Add(server.MemoryMiB);
                await Task.Delay(TimeSpan.FromSeconds(1), stop);
            }
        }
        catch (OperationCanceledException)
        {
            // The evening is over.
        }
    }

    /// <summary>The record against what was acknowledged.</summary>
    private static async Task<(int Lost, int Wrong)> CompareAsync(DataPlace place, Dictionary<string, string> acknowledged)
    {
        var (folder, store) = place.Open();
        using (folder)
        using (store)
        {
            var (kept, wrong) = (new HashSet<string>(), 0);
            foreach (var session in await store.ListAsync(new SessionFilter { Limit = int.MaxValue }, CancellationToken.None))
            {
                await foreach (var entry in store.ReadLogAsync(session.SessionId, 0, CancellationToken.None))
                {
                    if (entry.Input is SessionInput.ShotThrown { Shot.Id: { } id })
                    {
                        kept.Add(id);
                        wrong += acknowledged.TryGetValue(id, out var bowler) && bowler != session.Bowler ? 1 : 0;
                    }
                }
            }

            return (acknowledged.Keys.Count(id => !kept.Contains(id)), wrong);
        }
    }
}
