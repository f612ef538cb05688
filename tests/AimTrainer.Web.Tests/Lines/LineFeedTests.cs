using System.Diagnostics;
using System.Net;
using System.Text;
using System.Text.Json;
using AimTrainer.Feeds;
using AimTrainer.Sessions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Web.Tests;

public sealed class LineFeedTests
{
    [Fact]
    public async Task Shot_KeptAgainRefused_OneAnswerEach()
    {
        await using var host = await TestHost.StartAsync(lines: true);
        var session = await host.StartSessionAsync(2);
        using var feed = await LineClient.OpenAsync(host.Lines, 2);

        var welcome = (await feed.AnswerAsync())!.Value;
        Assert.Equal(("welcome", 2, session), (LineClient.Word(welcome), welcome.GetProperty("station").GetInt32(), welcome.GetProperty("session").GetString()));
        var kept = await feed.SayAsync("""{"id":"a","arrowsBoard":10.4}""");
        Assert.Equal(
            ("kept", "a", 2, 1),
            (LineClient.Word(kept), kept.GetProperty("id").GetString(), kept.GetProperty("sequence").GetInt32(), kept.GetProperty("number").GetInt32()));
        var again = await feed.SayAsync("""{"id":"a","arrowsBoard":10.4}""");
        Assert.Equal(("again", 2, 1), (LineClient.Word(again), again.GetProperty("sequence").GetInt32(), again.GetProperty("number").GetInt32()));
        Assert.Contains("$.arrowsBoard: found 99; allowed", LineClient.Why(await feed.SayAsync("""{"id":"b","arrowsBoard":99}""")), StringComparison.Ordinal);
        Assert.Contains("$.id: found none", LineClient.Why(await feed.SayAsync("""{"arrowsBoard":9}""")), StringComparison.Ordinal);
        Assert.Equal("beat", LineClient.Word(await feed.SayAsync("""{"beat":true}""")));
        Assert.Equal(2, (await host.GetAsync("/api/stations/2")).GetProperty("version").GetInt32());
    }

    [Fact]
    public async Task Shot_AnswerLostThenSentAgainAfterARestart_CountsOnce()
    {
        await using var host = await TestHost.StartAsync(lines: true);
        await host.StartSessionAsync();
        using (var lost = await LineClient.OpenAsync(host.Lines, 1))
        {
            await lost.AnswerAsync();
            await lost.SayAsync("""{"id":"a","arrowsBoard":10}""");
        }

        await host.RestartAsync();
        using var feed = await LineClient.OpenAsync(host.Lines, 1);
        await feed.AnswerAsync();

        Assert.Equal("again", LineClient.Word(await feed.SayAsync("""{"id":"a","arrowsBoard":10}""")));
        Assert.Equal(2, (await host.GetAsync("/api/stations/1")).GetProperty("nextNumber").GetInt32());
    }

    [Fact]
    public async Task Shot_NoSession_IsToBeSentAgain()
    {
        await using var host = await TestHost.StartAsync(lines: true);
        using var feed = await LineClient.OpenAsync(host.Lines, 1);
        await feed.AnswerAsync();

        Assert.True((await feed.SayAsync("""{"id":"a","arrowsBoard":10}""")).GetProperty("sendAgain").GetBoolean());
    }

    [Fact]
    public async Task Hello_OneStation_MayBeLeftOut()
    {
        await using var host = await TestHost.StartAsync(stations: 1, lines: true);
        await host.StartSessionAsync();
        using var feed = await LineClient.OpenAsync(host.Lines);

        Assert.Equal("kept", LineClient.Word(await feed.SayAsync("""{"id":"a","arrowsBoard":10}""")));
    }

    [Theory]
    [InlineData("""{"id":"a","arrowsBoard":10}""", "station: found none; allowed: 1, 2")]
    [InlineData("""{"hello":{"station":3}}""", "station: found 3; allowed: 1, 2")]
    [InlineData("""{"hello":{"station":1,"name":"x"}}""", "$.hello.name")]
    [InlineData("""{"hello":{"token":"feed-unknown"}}""", "token: found one that is not known here")]
    [InlineData("POST / HTTP/1.1\r\nHost: localhost\r\n\r\n{\"id\":\"a\",\"arrowsBoard\":10}", "the first line is not a JSON object")]
    [InlineData("[]", "the first line is not a JSON object")]
    [InlineData("", "the first line is not a JSON object")]
    public async Task FirstLine_Wrong_IsToldAndClosed(string first, string why)
    {
        await using var host = await TestHost.StartAsync(lines: true);
        await host.StartSessionAsync();
        using var feed = await LineClient.OpenAsync(host.Lines);

        Assert.Contains(why, LineClient.Why(await feed.SayAsync(first)), StringComparison.Ordinal);
        Assert.Null(await feed.AnswerAsync());
        Assert.Equal(1, (await host.GetAsync("/api/stations/1")).GetProperty("nextNumber").GetInt32());
    }

    [Fact]
    public async Task Token_OfStationOne_OpensStationOneUntilRevoked()
    {
        await using var host = await TestHost.StartAsync(lines: true, passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        await coach.BeginAsync(1);
        var made = await TestHost.BodyAsync(await coach.PostAsync("/api/access/feeds", """{"name":"sensor","station":1}"""));
        var token = made.GetProperty("token").GetString()!;

        using (var without = await LineClient.OpenAsync(host.Lines, 1))
        {
            Assert.StartsWith("token: found none", LineClient.Why(await without.AnswerAsync()), StringComparison.Ordinal);
        }

        using (var other = await LineClient.OpenAsync(host.Lines, 2, token))
        {
            Assert.StartsWith("station: found 2; allowed: 1", LineClient.Why(await other.AnswerAsync()), StringComparison.Ordinal);
        }

        using var feed = await LineClient.OpenAsync(host.Lines, null, token);
        Assert.Equal("welcome", LineClient.Word(await feed.AnswerAsync()));
        Assert.Equal("kept", LineClient.Word(await feed.SayAsync("""{"id":"a","arrowsBoard":10}""")));
        await coach.SendAsync(HttpMethod.Delete, $"/api/access/feeds/{made.GetProperty("feed").GetProperty("id").GetString()}");
        Assert.Contains("revoked", LineClient.Why(await feed.SayAsync("""{"id":"b","arrowsBoard":10}""")), StringComparison.Ordinal);
        Assert.Null(await feed.AnswerAsync());
        Assert.DoesNotContain(token, host.Log.All, StringComparison.Ordinal);
    }

    [Fact]
    public async Task State_AbsentConnectingLiveSilent_WithTheAgeOfTheLastLine()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(lines: true, clock: clock);
        await host.StartSessionAsync();
        async Task<(string? State, double? Age)> StateAsync()
        {
            var feed = (await host.GetAsync("/api/stations/1")).GetProperty("feed");
            var age = feed.GetProperty("lastLineAgeSeconds");
            return (feed.GetProperty("state").GetString(), age.ValueKind == JsonValueKind.Null ? null : age.GetDouble());
        }

        Assert.Equal(("absent", null), await StateAsync());
        using var stream = await EventReader.OpenAsync(host.Client, "/api/stations/1/live");
        using (var feed = await LineClient.OpenAsync(host.Lines, 1))
        {
            await feed.AnswerAsync();
            Assert.Equal(("connecting", null), await StateAsync());
            await feed.SayAsync("""{"beat":true}""");
            clock.Advance(TimeSpan.FromSeconds(2.5));
            Assert.Equal(("live", 2.5), await StateAsync());
            clock.Advance(TimeSpan.FromSeconds(12.5));
            Assert.Equal(("live", 15), await StateAsync());
            clock.Advance(TimeSpan.FromSeconds(0.5));
            Assert.Equal(("silent", 15.5), await StateAsync());
            clock.Advance(TimeSpan.FromSeconds(1));
            Assert.Equal("silent", await UntilAsync(stream, "silent"));
            await feed.SayAsync("""{"id":"a","arrowsBoard":10}""");
            Assert.Equal(("live", 0), await StateAsync());
        }

        // The host sees that it left as soon as it reads the end of the stream.
        while ((await StateAsync()).State != "absent")
        {
            await Task.Yield();
        }

        Assert.Equal(("absent", 0), await StateAsync());
    }

    [Fact]
    public async Task Bytes_HalfLinesGarbageWrongEncodingTooLong_AreSurvived()
    {
        await using var host = await TestHost.StartAsync(lines: true);
        await host.StartSessionAsync();
        using var feed = await LineClient.OpenAsync(host.Lines, 1);
        await feed.AnswerAsync();

        // A line in three pieces, and two lines in one.
        await feed.WriteAsync("""{"id":"a",""");
        await feed.WriteAsync("""  "arrowsBoard":""");
        await feed.WriteAsync("10}\n{\"id\":\"b\",\"arrowsBoard\":11}\r\n{\"id\":");
        Assert.Equal(("kept", "kept"), (LineClient.Word(await feed.AnswerAsync()), LineClient.Word(await feed.AnswerAsync())));
        await feed.WriteAsync("\"c\",\"arrowsBoard\":9}\n");
        Assert.Equal("kept", LineClient.Word(await feed.AnswerAsync()));

        await feed.WriteBytesAsync([0, 1, 2, 0xff, 0xfe, (byte)'\n']);
        Assert.NotEqual("", LineClient.Why(await feed.AnswerAsync()));
        await feed.WriteBytesAsync([.. Encoding.Latin1.GetBytes("{\"id\":\"e\",\"arrowsBoard\":9,\"note\":\"für\"}"), (byte)'\n']);
        Assert.NotEqual("", LineClient.Why(await feed.AnswerAsync()));
        await feed.WriteAsync(new string('x', 1 << 20) + "\n");
        Assert.Contains("more than 16384 bytes", LineClient.Why(await feed.AnswerAsync()), StringComparison.Ordinal);
        await feed.WriteAsync($$"""{"id":"f","note":"{{new string('y', 16 * 1024)}}"}""" + "\n");
        Assert.Contains("more than 16384 bytes", LineClient.Why(await feed.AnswerAsync()), StringComparison.Ordinal);
        Assert.Equal("kept", LineClient.Word(await feed.SayAsync("""{"id":"g","arrowsBoard":9}""")));

        // Half a line at the end is no shot.
        await feed.WriteAsync("""{"id":"h","arrowsBoard":9}""");
        feed.Done();
        Assert.Null(await feed.AnswerAsync());
        Assert.Equal(5, (await host.GetAsync("/api/stations/1")).GetProperty("nextNumber").GetInt32());
    }

    [Fact]
    public async Task Flood_FromAReaderThatDoesNotRead_HoldsUpNobodyElse()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(lines: true, clock: clock);
        await host.StartSessionAsync();
        using var flood = await LineClient.OpenAsync(host.Lines, 2);
        var many = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("{\"id\":\"flood\",\"arrowsBoard\":99}\n", 4000)));
        var flooding = Task.Run(
            async () =>
            {
                while (true)
                {
                    await flood.WriteBytesAsync(many);
                }
            },
            TestContext.Current.CancellationToken);

        // The pace lets a second's worth through and then waits for the clock, which stands still: what comes after stays on the wire.
        long Refused() => host.Services.GetRequiredService<IFeedWatch>().Of(2)!.Refused;
        while (Refused() < 200)
        {
            await Task.Yield();
        }

        using var feed = await LineClient.OpenAsync(host.Lines, 1);
        await feed.AnswerAsync();
        for (var i = 0; i < 8; i++)
        {
            Assert.Equal("kept", LineClient.Word(await feed.SayAsync($$"""{"id":"shot-{{i}}","arrowsBoard":10}""")));
        }

        Assert.InRange(Refused(), 200, 201);
        Assert.False(flooding.IsCompleted);
        flood.Dispose();
        await Assert.ThrowsAnyAsync<Exception>(() => flooding);
    }

    [Fact]
    public async Task Garbage_LineAfterLine_IsCutOffAndOneTooManyIsTold()
    {
        await using var host = await TestHost.StartAsync(stations: 1);
        using var lines = new LineFeed(
            new LineFeedSettings { Address = new IPEndPoint(IPAddress.Loopback, 0), MostRefusedInARow = 20, MostConnections = 1 },
            host.Services.GetRequiredService<IReadOnlyList<Station>>(), host.Services.GetRequiredService<ISessionStore>(), host.Services.GetRequiredService<IFeedGate>(),
            TimeProvider.System, LineFeedEvents.None);
        await lines.StartAsync(TestContext.Current.CancellationToken);
        using var client = await LineClient.OpenAsync(lines.Address, 1);
        await client.AnswerAsync();
        using (var second = await LineClient.OpenAsync(lines.Address, 1))
        {
            Assert.Contains("1 connections already", LineClient.Why(await second.AnswerAsync()), StringComparison.Ordinal);
        }

        for (var i = 0; i < 20; i++)
        {
            Assert.Equal("refused", LineClient.Word(await client.SayAsync("{}")));
        }

        Assert.Null(await client.AnswerAsync());
        await lines.StopAsync(TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Connections_TooManyFromOneAddress_AreToldAndOneThatLeavesMakesRoom()
    {
        await using var host = await TestHost.StartAsync(stations: 1);
        using var lines = new LineFeed(
            new LineFeedSettings { Address = new IPEndPoint(IPAddress.Loopback, 0), MostFromOneAddress = 1 },
            host.Services.GetRequiredService<IReadOnlyList<Station>>(), host.Services.GetRequiredService<ISessionStore>(), host.Services.GetRequiredService<IFeedGate>(),
            TimeProvider.System, LineFeedEvents.None);
        await lines.StartAsync(TestContext.Current.CancellationToken);
        using (var first = await LineClient.OpenAsync(lines.Address, 1))
        {
            await first.AnswerAsync();
            using var second = await LineClient.OpenAsync(lines.Address, 1);
            Assert.Contains("1 connections from 127.0.0.1 already", LineClient.Why(await second.AnswerAsync()), StringComparison.Ordinal);
            Assert.Null(await second.AnswerAsync());
        }

        string word;
        do
        {
            using var third = await LineClient.OpenAsync(lines.Address, 1);
            word = LineClient.Word(await third.AnswerAsync());
        }
        while (word != "welcome");

        await lines.StopAsync(TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Example_InPython_ItsShotsAreKept()
    {
        await using var host = await TestHost.StartAsync(lines: true, passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        await coach.BeginAsync(2);
        var made = await TestHost.BodyAsync(await coach.PostAsync("/api/access/feeds", """{"name":"example","station":2}"""));
        var script = Path.Combine(AppContext.BaseDirectory, "examples", "line_feed.py");
        Assert.InRange((await File.ReadAllLinesAsync(script, TestContext.Current.CancellationToken)).Length, 10, 30);
        var start = new ProcessStartInfo("python3", [script, "127.0.0.1", $"{host.Lines.Port}", "2"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["FEED_TOKEN"] = made.GetProperty("token").GetString();
        using var python = Process.Start(start)!;
        await python.StandardInput.WriteAsync("10\n11.5\n99\n9.25\n");
        python.StandardInput.Close();

        var output = (await python.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("", await python.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        Assert.Equal(["kept", "kept", "refused", "kept"], output.Select(line => line.Split(' ')[0]));
        var view = JsonDocument.Parse(await coach.Client.GetStringAsync("/api/stations/2", TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal(4, view.GetProperty("nextNumber").GetInt32());
    }

    private static async Task<string?> UntilAsync(EventReader stream, string state)
    {
        while (await stream.NextAsync() is { } picture)
        {
            if (picture.Data.GetProperty("feed").GetProperty("state").GetString() == state)
            {
                return state;
            }
        }

        return null;
    }
}
