using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Web.Tests;

public sealed class MalformedTests : IAsyncLifetime
{
    private const ulong Seed = 20260301;
    private const int Requests = 240, Lines = 120;

    private static readonly (HttpMethod Method, string Path, string Body)[] Good =
    [
        (HttpMethod.Post, "/api/stations/1/shots",
            """{"id":"good","time":"2026-03-01T18:05:09+01:00","crossings":[{"feet":15,"board":12.5}],"speedMph":17,"speedAt":"release","pins":9}"""),
        (HttpMethod.Post, "/api/stations/1/actions", """{"kind":"target","target":"second arrow","widthBoards":4,"id":"t-1"}"""),
        (HttpMethod.Post, "/api/stations/1/actions", """{"kind":"correct","number":1,"shot":{"arrowsBoard":11,"note":"misread"}}"""),
        (HttpMethod.Post, "/api/stations/2/sessions", """{"bowler":"Ben","drill":"three-rings","hand":"left","patternFeet":42,"seed":7}"""),
        (HttpMethod.Put, "/api/drills/made-up",
            """{"format":1,"id":"made-up","name":"Made up","purpose":"A test.","whoFor":"Nobody.","aboutMinutes":5,"cautions":["Nobody walks past the foul line."],"blocks":[]}"""),
        (HttpMethod.Post, "/api/access/sign-in", """{"passphrase":"some words here"}"""),
        (HttpMethod.Post, "/api/access/pair", """{"code":"123456"}"""),
        (HttpMethod.Post, "/api/access/codes", """{"station":1}"""),
        (HttpMethod.Post, "/api/access/feeds", """{"name":"camera","station":1}"""),
    ];

    private static readonly (string Method, string Path, int Status)[] Addresses =
    [
        ("GET", "/api/stations/0", 404),
        ("GET", "/api/stations/65", 404),
        ("GET", "/api/stations/-1", 404),
        ("GET", "/api/stations/2147483648", 404),
        ("GET", "/api/stations/1e0", 404),
        ("GET", "/api/stations/1/live?view=everything", 400),
        ("GET", "/api/sessions?limit=0", 400),
        ("GET", "/api/sessions?limit=many", 400),
        ("GET", "/api/sessions?ended=perhaps", 400),
        ("GET", "/api/sessions/none", 404),
        ("GET", "/api/sessions/none/shots.csv", 404),
        ("GET", "/api/sessions/none/events", 404),
        ("GET", "/api/sessions/..%2f..%2fetc%2fpasswd", 404),
        ("GET", "/api/drills/..%2f..%2f..%2fetc%2fpasswd", 404),
        ("GET", "/api/drills/%2e%2e%2fpassphrase", 404),
        ("GET", "/api/drills/..%5c..%5cwindows", 404),
        ("GET", "/api/drills/drill.schema", 404),
        ("DELETE", "/api/drills/..%2fpassphrase", 404),
        ("DELETE", "/api/drills/..%2faimtrainer", 404),
        ("DELETE", "/api/drills/three-rings", 409),
        ("GET", "/assets/..%2f..%2faimtrainer.dll", 404),
        ("GET", "/assets/api%2fschemas.json", 404),
        ("GET", "/api/bowlers/nobody", 404),
        ("DELETE", "/api/stations/1", 405),
        ("PATCH", "/api/drills/three-rings", 405),
        ("DELETE", "/api/access/feeds/none", 404),
        ("DELETE", "/api/access/pairings/none", 404),
        ("GET", "/api/../../secrets", 404),
    ];

    private static readonly (string Wire, int Status)[] Wires =
    [
        ("NONSENSE\r\n\r\n", 400),
        ("GET / HTTP/1.1\r\n\r\n", 400),
        ("GET / HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n", 400),
        ("GET /api/drills/three-rings%00.json HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n", 400),
        ("POST /api/stations/1/shots HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 99999999999\r\n\r\n", 413),
        ("POST /api/stations/1/shots HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: -4\r\n\r\n", 400),
        ("POST /api/stations/1/shots HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\nZZ\r\n", 400),
        ("GET / HTTP/1.0\r\n\r\n", 421),
    ];

    private TestHost _host = null!;
    private string _before = "";

    public async ValueTask InitializeAsync()
    {
        _host = await TestHost.StartAsync(lines: true);
        await _host.StartSessionAsync();
        await _host.ShotAsync("first");
        _before = await StateAsync();
    }

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task Requests_BrokenBySeed_RightStatusWordsAndNothingStored()
    {
        var seen = new Dictionary<HttpStatusCode, int>();
        for (var i = 0UL; i < Requests; i++)
        {
            var (request, expected) = Broken(i);
            var answer = await _host.Client.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Matches("allowed|/openapi/v1.json", await TestHost.RefusedAsync(expected, answer));
            seen[expected] = seen.GetValueOrDefault(expected) + 1;
        }

        // Every sort has come, or the seed is a bad one.
        Assert.True(seen.Count >= 5 && seen.Values.All(count => count >= 5), string.Join(", ", seen));
        Assert.Equal(_before, await StateAsync());
    }

    [Fact]
    public async Task Lines_BrokenBySeed_RefusedInWordsAndNothingStored()
    {
        using var feed = await LineClient.OpenAsync(_host.Lines, 1);
        await feed.AnswerAsync();
        for (var i = 0UL; i < Lines; i++)
        {
            await feed.WriteBytesAsync([.. BrokenText(Good[0].Body, 1000 + i).Where(one => one != (byte)'\n'), (byte)'\n']);
            var answer = (await feed.AnswerAsync())!.Value;
            Assert.Equal("refused", LineClient.Word(answer));
            Assert.Contains("allowed", LineClient.Why(answer), StringComparison.Ordinal);
        }

        Assert.Equal(_before, await StateAsync());
    }

    [Fact]
    public async Task Addresses_Wrong_RightStatusInWordsAndNothingStored()
    {
        foreach (var (method, path, status) in Addresses)
        {
            // Sent by hand: the client would tidy the path up.
            var (got, body) = await RawAsync($"{method} {path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Length: 0\r\n\r\n");
            Assert.True(status == got, $"{method} {path}: {got} {body}");
            var problem = JsonDocument.Parse(body).RootElement;
            Assert.Equal(status, problem.GetProperty("status").GetInt32());
            Assert.NotEqual("", problem.GetProperty("detail").GetString());
        }

        Assert.Equal(_before, await StateAsync());
    }

    [Fact]
    public async Task Wires_NotAsHttpWantsThem_AreRefusedAndNothingStored()
    {
        foreach (var (wire, status) in Wires)
        {
            Assert.Equal((wire, status), (wire, (await RawAsync(wire)).Status));
        }

        Assert.Equal(_before, await StateAsync());
    }

    /// <summary>A good request with one thing broken, and the status that it must get.</summary>
    private static (HttpRequestMessage Request, HttpStatusCode Expected) Broken(ulong number)
    {
        int Roll(ulong step, int count) => SeededRandom.Index(Seed, (number * 16) + step, count);
        var (method, path, body) = Good[Roll(0, Good.Length)];
        var bytes = Encoding.UTF8.GetBytes(body);
        switch (Roll(1, 10))
        {
            case 0:
                string[] types = ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "application/xml", "", "application/jsonp"];
                return (Request(method, path, bytes, types[Roll(2, types.Length)]), HttpStatusCode.UnsupportedMediaType);
            case 1:
                return (Request(method, path, new byte[(1 << 20) + 1 + Roll(2, 100_000)]), HttpStatusCode.RequestEntityTooLarge);
            case 2 when path.Contains("/stations/", StringComparison.Ordinal):
                string[] stations = ["0", "3", "-1", "one", "1.5", "2147483648", "%20"];
                var parts = path.Split('/');
                parts[3] = stations[Roll(2, stations.Length)];
                return (Request(method, string.Join('/', parts), bytes), HttpStatusCode.NotFound);
            case 3:
                return (Request(HttpMethod.Patch, path, bytes), HttpStatusCode.MethodNotAllowed);
            default:
                return (Request(method, path, BrokenText(body, number)), HttpStatusCode.BadRequest);
        }
    }

    private static HttpRequestMessage Request(HttpMethod method, string path, byte[] bytes, string type = "application/json")
    {
        var content = new ByteArrayContent(bytes);
        content.Headers.TryAddWithoutValidation("Content-Type", type);
        return new HttpRequestMessage(method, path) { Content = content };
    }

    /// <summary>A good JSON text made a bad one: in a way that no reader may take.</summary>
    private static byte[] BrokenText(string good, ulong number)
    {
        int Roll(ulong step, int count) => SeededRandom.Index(Seed, (number * 16) + step, count);
        var bytes = Encoding.UTF8.GetBytes(good);
        return Roll(4, 9) switch
        {
            0 => bytes[..Roll(5, bytes.Length)],
            1 => [.. bytes[..Roll(5, bytes.Length)], 0xff, .. bytes[^1..]],
            2 => Encoding.UTF8.GetBytes($$"""{"unheardOf":1,{{good[1..]}}"""),
            3 => Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("[", 40 + Roll(5, 3000))) + good),
            4 => Encoding.UTF8.GetBytes(good + good),
            5 => Encoding.UTF8.GetBytes($"[{good}]"),
            6 => Encoding.Unicode.GetBytes(good),
            7 => Encoding.UTF8.GetBytes(good.Replace("\":", "\": ,", StringComparison.Ordinal)),
            _ => Encoding.UTF8.GetBytes(good[..^1] + "," + good[1..]),
        };
    }

    private async Task<(int Status, string Body)> RawAsync(string wire)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(_host.Address.Host, _host.Address.Port, TestContext.Current.CancellationToken);
        var stream = client.GetStream();
        await stream.WriteAsync(Encoding.Latin1.GetBytes(wire), TestContext.Current.CancellationToken);
        using var bytes = new MemoryStream();
        try
        {
            await stream.CopyToAsync(bytes, TestContext.Current.CancellationToken);
        }
        catch (IOException)
        {
            // The host answered and cut the rest off.
        }

        var text = Encoding.UTF8.GetString(bytes.ToArray());
        var body = text[(text.IndexOf("\r\n\r\n", StringComparison.Ordinal) + 4)..];

        // What is sent in chunks has their lengths around it.
        var (first, last) = (body.IndexOf('{', StringComparison.Ordinal), body.LastIndexOf('}'));
        return (int.Parse(text.AsSpan(9, 3), CultureInfo.InvariantCulture), first < 0 ? "" : body[first..(last + 1)]);
    }

    /// <summary>All that a request could have stored.</summary>
    private async Task<string> StateAsync()
    {
        var cancel = TestContext.Current.CancellationToken;
        var drills = Path.Combine(_host.Folder, "drills");
        var files = Directory.GetFiles(_host.Folder).Select(file => Path.GetFileName(file))
            .Where(name => name.StartsWith("pass", StringComparison.Ordinal) || name.StartsWith("feed", StringComparison.Ordinal));
        string[] state =
        [
            await _host.Client.GetStringAsync("/api/sessions", cancel), await _host.Client.GetStringAsync("/api/bowlers", cancel),
            $"{(await _host.GetAsync("/api/stations/1")).GetProperty("version")} {(await _host.GetAsync("/api/stations/2")).GetProperty("sessionId")}",
            await _host.Client.GetStringAsync("/api/access/feeds", cancel), await _host.Client.GetStringAsync("/api/access/pairings", cancel),
            Directory.Exists(drills) ? string.Join(' ', Directory.GetFiles(drills)) : "", string.Join(' ', files),
        ];
        return string.Join('\n', state);
    }
}
