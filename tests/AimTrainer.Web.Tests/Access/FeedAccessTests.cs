using System.Net;
using System.Text;
using System.Text.Json;
using AimTrainer.Feeds;
using AimTrainer.Sessions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Web.Tests;

/// <summary>Rules of access that only show when somebody pushes against them.</summary>
public sealed class FeedAccessTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Audit_OfFeeds_HasTokensMadeShownRefusedAndRevoked()
    {
        await using var host = await TestHost.StartAsync(lines: true, passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        var made = await TestHost.BodyAsync(await coach.PostAsync("/api/access/feeds", """{"name":"camera","station":1}"""));
        var (token, id) = (made.GetProperty("token").GetString()!, made.GetProperty("feed").GetProperty("id").GetString()!);
        using (var good = await LineClient.OpenAsync(host.Lines, 1, token))
        {
            Assert.Equal("welcome", LineClient.Word(await good.AnswerAsync()));
        }

        using (var wrong = await LineClient.OpenAsync(host.Lines, 2, token))
        {
            await wrong.AnswerAsync();
        }

        using (var none = await LineClient.OpenAsync(host.Lines, 1))
        {
            await none.AnswerAsync();
        }

        await host.ShotAsync("a", token: token);
        await coach.SendAsync(HttpMethod.Delete, $"/api/access/feeds/{id}");
        using (var late = await LineClient.OpenAsync(host.Lines, 1, token))
        {
            await late.AnswerAsync();
        }

        await host.ShotAsync("b", token: token);

        // A shot of a feed is in the session's own log and not here; what was let in and what was not is.
        Assert.Equal(
            [
                $"POST /api/access/feeds 200 token {id} for a feed of station 1",
                $"LINES hello 200 feed camera ({id}): sends for station 1",
                $"LINES hello 401 feed camera ({id}): station: found 2; allowed: 1, the token's own",
                "LINES hello 401 nobody known: without a token",
                $"DELETE /api/access/feeds/{id} 200 token {id} revoked",
                "LINES hello 401 nobody known: a token that is not known",
                "POST /api/stations/1/shots 401 nobody known: a token that is not known",
            ],
            Lines(host).Skip(1).Select(line =>
            {
                var (what, who) = (line.GetProperty("what").GetString()!, line.GetProperty("who").GetString()!);
                Assert.Equal("127.0.0.1", line.GetProperty("from").GetString());
                var by = who.StartsWith("coach", StringComparison.Ordinal) ? "" : $"{who}: ";
                return $"{what} {line.GetProperty("status").GetInt32()} {by}{line.GetProperty("detail").GetString()}";
            }));
    }

    [Fact]
    public async Task Audit_OfManyWrongTokens_KeepsFiveAMinuteOfEachAddress()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(passphrase: true, clock: clock);
        for (var i = 0; i < 40; i++)
        {
            await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await host.ShotAsync("a", token: $"feed-guess-{i}"));
        }

        Assert.Equal(5, Lines(host).Count);
        clock.Advance(TimeSpan.FromMinutes(1));
        await host.ShotAsync("a", token: "feed-guess");
        Assert.Equal(6, Lines(host).Count);
    }

    [Fact]
    public void Codes_FiftyWrongOnes_EndAllThatAreOut()
    {
        var codes = new PairingCodes(new FakeTimeProvider());
        var (phone, projector) = (codes.New(Role.Bowler, 1).Code, codes.New(Role.Projector, 2).Code);
        string Wrong(int i) => Enumerable.Range(0, 10).Select(j => $"{((i * 10) + j) % 1_000_000:d6}").First(code => code != phone && code != projector);
        for (var i = 0; i < 49; i++)
        {
            Assert.Null(codes.Use(Role.Bowler, Wrong(i)));
        }

        // The 49 wrong ones did not hurt a right one; the fiftieth ends the rest. A new code starts the count anew.
        Assert.Equal(1, codes.Use(Role.Bowler, phone));
        Assert.Null(codes.Use(Role.Bowler, Wrong(49)));
        Assert.Null(codes.Use(Role.Projector, projector));
        var again = codes.New(Role.Bowler, 3).Code;
        Assert.Equal(3, codes.Use(Role.Bowler, again));
    }

    [Fact]
    public void Codes_OfAnotherRole_AreWrongAndNotUsedUp()
    {
        var codes = new PairingCodes(new FakeTimeProvider());
        var code = codes.New(Role.Projector, 2).Code;

        Assert.Null(codes.Use(Role.Bowler, code));
        Assert.Equal(2, codes.Use(Role.Projector, code));
        Assert.Null(codes.Use(Role.Projector, code));
    }

    [Fact]
    public async Task Codes_TenTriesAMinute_ThenTheAddressWaits()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(passphrase: true, clock: clock);
        Task<HttpResponseMessage> TryAsync() => host.Client.PostAsync("/api/access/pair", TestHost.Json("""{"code":"not one"}"""), Cancel);
        for (var i = 0; i < 10; i++)
        {
            await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await TryAsync());
        }

        var held = await TryAsync();
        await TestHost.RefusedAsync(HttpStatusCode.TooManyRequests, held);
        Assert.Equal(60, held.Headers.RetryAfter?.Delta?.TotalSeconds);
        clock.Advance(TimeSpan.FromMinutes(1));
        await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await TryAsync());
    }

    [Fact]
    public async Task Reader_ThatLeavesItsAnswersLying_IsCutOffAfterItsPatienceAndNotBefore()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(stations: 1);
        using var lines = new LineFeed(
            new LineFeedSettings { Address = new IPEndPoint(IPAddress.Loopback, 0), MostLinesASecond = int.MaxValue, MostRefusedInARow = int.MaxValue },
            host.Services.GetRequiredService<IReadOnlyList<Station>>(), host.Services.GetRequiredService<ISessionStore>(), host.Services.GetRequiredService<IFeedGate>(),
            clock, LineFeedEvents.None);
        await lines.StartAsync(Cancel);
        using var slow = await LineClient.OpenAsync(lines.Address, 1);

        // Each answer holds the id, so that the way back is full soon: then the host neither writes nor reads.
        var many = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat($"{{\"id\":\"{new string('a', 200)}\",\"arrowsBoard\":10}}\n", 1000)));
        var sending = Task.Run(
            async () =>
            {
                while (true)
                {
                    await slow.WriteBytesAsync(many);
                }
            },
            Cancel);
        using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(10));
        for (var (same, last) = (0, -1L); same < 50;)
        {
            await timer.WaitForNextTickAsync(Cancel);
            var now = lines.Of(1)!.Refused;
            (same, last) = now == last && now > 0 ? (same + 1, now) : (0, now);
        }

        clock.Advance(TimeSpan.FromSeconds(29.9));
        Assert.NotEqual(FeedState.Absent, lines.Of(1)!.State);
        Assert.False(sending.IsCompleted);
        clock.Advance(TimeSpan.FromSeconds(0.2));
        await Assert.ThrowsAnyAsync<Exception>(() => sending);
        while (lines.Of(1)!.State != FeedState.Absent)
        {
            await timer.WaitForNextTickAsync(Cancel);
        }

        await lines.StopAsync(Cancel);
    }

    private static List<JsonElement> Lines(TestHost host) =>
        [.. File.ReadAllLines(Path.Combine(host.Folder, "audit.jsonl")).Select(line => JsonDocument.Parse(line).RootElement)];
}
