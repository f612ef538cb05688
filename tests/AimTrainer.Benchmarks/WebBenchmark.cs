using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;

namespace AimTrainer.Benchmarks;

/// <summary>
/// A center over HTTP: 32 stations at ten times a lane's pace with 64 open event streams, from a shot's acknowledgement, and from its
/// sending, to the event in the reader's hands; and the throughput of shots against <see cref="BareServer"/>.
/// </summary>
internal static class WebBenchmark
{
    /// <summary>Our host, started by this benchmark.</summary>
    public const string Server = "web-server";

    private const int Stations = 32, Streams = 64, Rounds = 5, SecondsARound = 3;
    private const double SecondsBetweenShots = 3;

    public static async Task RunAsync(int seconds)
    {
        await StreamsAsync(seconds);
        await ThroughputAsync();
    }

    private static async Task StreamsAsync(int seconds)
    {
        using var place = new DataPlace();
        using var server = await WebProcess.StartAsync("AimTrainer.Benchmarks.dll", Server, place.Folder, Stations.ToString(CultureInfo.InvariantCulture));
        using var client = Client(server.Address);
        await BeginAsync(client);

        using var stop = new CancellationTokenSource();
        var seen = new ConcurrentQueue<(int Station, int Version, long At)>();
        var open = new CountdownEvent(Streams);
        var readers = Enumerable.Range(0, Streams).Select(i => ReadAsync(client, (i % Stations) + 1, seen, open, stop.Token)).ToList();
        await Task.Run(open.Wait, stop.Token);

        // A shot on each beforehand: the runtime compiles what is hot.
        for (var station = 1; station <= Stations; station++)
        {
            await ShotAsync(client, station, $"warm-{station}");
        }

        seen.Clear();
        var (usedBefore, begun, shots) = (server.ProcessorTime, Stopwatch.GetTimestamp(), new ConcurrentBag<(int Station, int Version, long Sent, long Accepted)>());
        var sending = new List<Task>();
        for (var i = 0; i < (int)(seconds / SecondsBetweenShots) * Stations; i++)
        {
            var due = TimeSpan.FromSeconds(i * SecondsBetweenShots / Stations) - Stopwatch.GetElapsedTime(begun);
            if (due > TimeSpan.Zero)
            {
                await Task.Delay(due);
            }

            var (station, id) = ((i % Stations) + 1, $"shot-{i}");
            sending.Add(Task.Run(async () =>
            {
                var sent = Stopwatch.GetTimestamp();
                var version = await ShotAsync(client, station, id);
                shots.Add((station, version, sent, Stopwatch.GetTimestamp()));
            }));
        }

        await Task.WhenAll(sending);
        var took = Stopwatch.GetElapsedTime(begun);
        var used = server.ProcessorTime - usedBefore;
        var memory = server.MemoryMiB;
        await Task.Delay(TimeSpan.FromSeconds(1));
        await stop.CancelAsync();
        await Task.WhenAll(readers);

        // A reader may skip a picture when the next is there already: the first that shows the shot, or more, counts.
        var pictures = seen.GroupBy(one => one.Station).ToDictionary(group => group.Key, group => group.ToList());
        var (fromAccepted, fromSent) = (new List<double>(), new List<double>());
        foreach (var (station, version, sent, accepted) in shots)
        {
            var delivered = pictures[station].Where(one => one.Version >= version).Select(one => one.At).Order().Take(Streams / Stations).ToList();
            if (delivered.Count < Streams / Stations)
            {
                throw new InvalidOperationException($"shot {version} of station {station} came to {delivered.Count} readers");
            }

            foreach (var at in delivered)
            {
                fromAccepted.Add(Math.Max(0, Stopwatch.GetElapsedTime(accepted, at).TotalMilliseconds));
                fromSent.Add(Stopwatch.GetElapsedTime(sent, at).TotalMilliseconds);
            }
        }

        var (afterAccepted, afterSent) = (new Spread(fromAccepted), new Spread(fromSent));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"streams: {Stations} stations, a shot every {SecondsBetweenShots} s on each for {took.TotalSeconds:0} s, {shots.Count} shots, {Streams} streams, {fromAccepted.Count} deliveries; accepted to delivered "
            + $"median {afterAccepted.Median:0.0} ms, 99th percentile {afterAccepted.At(0.99):0.0} ms, longest {afterAccepted.At(1):0.0} ms, target 100 ms at the 99th; sent to delivered "
            + $"median {afterSent.Median:0.0} ms, 99th {afterSent.At(0.99):0.0} ms; server: {used / took:0.0%} of a core, {memory:0} MiB; on {Machine.DiskOf(place.Folder)}"));
    }

    private static async Task ThroughputAsync()
    {
        using var place = new DataPlace();
        using var bare = await WebProcess.StartAsync("AimTrainer.Benchmarks.dll", BareServer.Name, Path.Combine(place.Folder, "bare.db"));
        using var ours = await WebProcess.StartAsync("AimTrainer.Benchmarks.dll", Server, Path.Combine(place.Folder, "ours"), Stations.ToString(CultureInfo.InvariantCulture));
        using var bareClient = Client(bare.Address);
        using var client = Client(ours.Address);
        await BeginAsync(client);
        var (our, their, ratio) = (new List<double>(), new List<double>(), new List<double>());
        for (var round = 0; round <= Rounds; round++)
        {
            var turn = round;
            var theirs = await AtFullPaceAsync((station, i) => PostAsync(bareClient, "/shots", Body($"{turn}-{station}-{i}")));
            var mine = await AtFullPaceAsync((station, i) => ShotAsync(client, station, $"{turn}-{station}-{i}"));

            // The first round warms up and is thrown away.
            if (round > 0)
            {
                our.Add(mine);
                their.Add(theirs);
                ratio.Add(mine / theirs);
            }
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"throughput: {Stations} senders, each waits for its answer; POST shot {new Spread(our)} a second, a bare endpoint with one durable insert {new Spread(their)} a second, "
            + $"ratio {new Spread(ratio)}, target 0.5; {Rounds} rounds of {SecondsARound} s, turn by turn; our store keeps what waits in one transaction; on {Machine.DiskOf(place.Folder)}"));
    }

    private static async Task<double> AtFullPaceAsync(Func<int, int, Task> send)
    {
        var begun = Stopwatch.GetTimestamp();
        var counts = await Task.WhenAll(Enumerable.Range(1, Stations).Select(station => Task.Run(async () =>
        {
            var count = 0;
            for (; Stopwatch.GetElapsedTime(begun).TotalSeconds < SecondsARound; count++)
            {
                await send(station, count);
            }

            return count;
        })));
        return counts.Sum() / Stopwatch.GetElapsedTime(begun).TotalSeconds;
    }

    private static HttpClient Client(Uri address) => new(new SocketsHttpHandler { UseCookies = false, MaxConnectionsPerServer = 1000 }) { BaseAddress = address };

    private static async Task BeginAsync(HttpClient client)
    {
        await PutAsync(client, "/api/drills/measured", Drills.LongScript);
        for (var station = 1; station <= Stations; station++)
        {
            await PostAsync(client, $"/api/stations/{station}/sessions", $$"""{"bowler":"Bowler {{station}}","drill":"measured"}""");
            await PostAsync(client, $"/api/stations/{station}/actions", """{"kind":"begin"}""");
        }
    }

    private static async Task PutAsync(HttpClient client, string path, string body)
    {
        using var answer = await client.PutAsync(path, new StringContent(body, Encoding.UTF8, "application/json"));
        answer.EnsureSuccessStatusCode();
    }

    private static async Task<byte[]> PostAsync(HttpClient client, string path, string body)
    {
        using var answer = await client.PostAsync(path, new StringContent(body, Encoding.UTF8, "application/json"));
        return answer.IsSuccessStatusCode ? await answer.Content.ReadAsByteArrayAsync()
            : throw new InvalidOperationException($"{path}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
    }

    private static string Body(string id) => $$"""{"id":"{{id}}","arrowsBoard":10.4,"laydownBoard":18,"speedMph":17.2,"speedAt":"release","revsRpm":300}""";

    private static async Task<int> ShotAsync(HttpClient client, int station, string id) =>
        JsonDocument.Parse(await PostAsync(client, $"/api/stations/{station}/shots", Body(id))).RootElement.GetProperty("sequence").GetInt32();

    private static async Task ReadAsync(HttpClient client, int station, ConcurrentQueue<(int, int, long)> seen, CountdownEvent open, CancellationToken stop)
    {
        try
        {
            using var answer = await client.GetAsync($"/api/stations/{station}/live", HttpCompletionOption.ResponseHeadersRead, stop);
            if (answer.StatusCode != HttpStatusCode.OK)
            {
                throw new InvalidOperationException($"stream: {(int)answer.StatusCode}");
            }

            using var reader = new StreamReader(await answer.Content.ReadAsStreamAsync(stop));
            for (var first = true; await reader.ReadLineAsync(stop) is { } line;)
            {
                if (line.StartsWith("data: {\"station\"", StringComparison.Ordinal))
                {
                    var at = Stopwatch.GetTimestamp();
                    seen.Enqueue((station, JsonDocument.Parse(line.AsMemory(6)).RootElement.GetProperty("version").GetInt32(), at));
                    if (first)
                    {
                        first = false;
                        open.Signal();
                    }
                }
            }
        }
        catch (OperationCanceledException)
        {
            // Measured.
        }
    }
}
