using System.Net;
using System.Text.RegularExpressions;

namespace AimTrainer.Web.Tests;

/// <summary>A program of three weeks from its eve to its certificate, by a clock of the test. Invented people.</summary>
public sealed partial class WholeProgramTests
{
    private const int ShotsOfADrill = 10;

    private const string Three = """
        {
          "format": 1, "id": "three-tests", "name": "Three tests", "purpose": "Measures.", "whoFor": "Tests.",
          "joining": { "who": "Anybody.", "minors": "yes" }, "makeUp": { "withinDays": 7, "most": 1 },
          "levels": [{ "name": "all", "about": "Everybody." }],
          "weeks": [
            { "name": "The first look", "sessions": [{ "name": "First", "drills": [{ "drill": "ten-shot-spread" }] }] },
            { "name": "The second look", "sessions": [{ "name": "Second", "drills": [{ "drill": "ten-shot-spread" }] }] },
            {
              "name": "What stayed",
              "sessions": [{ "name": "Third", "retentionTest": true, "drills": [{ "drill": "ten-shot-spread", "goals": [{ "level": "all", "heldShare": 0.5 }] }] }]
            }
          ]
        }
        """;

    // A Tuesday evening; weeks begin on the group's first day, UTC.
    private static readonly DateTimeOffset Eve = new(2026, 8, 31, 19, 0, 0, TimeSpan.Zero);

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Program_ThrownToItsEnd_TodayAndTheCertificateSayWhereItIs()
    {
        var clock = new Calendar { Now = Eve };
        await using var host = await OpenAsync(clock, "Ann", "Ben");

        // The eve: nothing to start yet.
        var eve = await PageAsync(host, "/groups/tuesday");
        Assert.Contains("The first week begins on 1 September 2026: The first look. What is thrown before that day counts for no session.", eve, StringComparison.Ordinal);
        Assert.DoesNotContain("Start on all lanes", eve, StringComparison.Ordinal);

        // Week 1: both throw, so that nothing is left to throw in it.
        clock.Now = Eve.AddDays(1);
        Assert.Contains("Week 1: First, until 7 September 2026.", await PageAsync(host, "/groups/tuesday"), StringComparison.Ordinal);
        await ThrowAsync(host, "w1", "Ann", "Ben");
        var thrown = await PageAsync(host, "/groups/tuesday");
        Assert.Contains("Everybody has thrown what can be thrown now. Week 2 begins on 8 September 2026: The second look.", thrown, StringComparison.Ordinal);
        Assert.DoesNotContain("Start on all lanes", thrown, StringComparison.Ordinal);

        // Week 2: Ann alone; in week 3 Ben may make it up, and what is due is open to both.
        clock.Now = Eve.AddDays(8);
        await ThrowAsync(host, "w2", "Ann");
        clock.Now = Eve.AddDays(15);
        var third = await PageAsync(host, "/groups/tuesday");
        Assert.Contains("Week 3: Third, for 2 bowlers, until 21 September 2026. It begins with a test", third, StringComparison.Ordinal);
        Assert.Contains("Week 2: Second, for 1 bowler, to be made up by 21 September 2026.", third, StringComparison.Ordinal);
        await ThrowAsync(host, "w3", "Ann", "Ben");

        // Ben's one session counts for its own week; the second was never made up.
        clock.Now = Eve.AddDays(100);
        var over = await PageAsync(host, "/groups/tuesday");
        Assert.Contains("The program is over: its last week ended on 21 September 2026.", over, StringComparison.Ordinal);
        Assert.Contains("Certificate of Ann", over, StringComparison.Ordinal);
        Assert.Contains("Ben: 2 of 3 sessions, 1 missed, so no certificate", over, StringComparison.Ordinal);
        Assert.DoesNotContain("Start on all lanes", over, StringComparison.Ordinal);
        Assert.Contains("Holds 1 board, Whole program", over, StringComparison.Ordinal);

        var certificate = await PageAsync(host, "/groups/tuesday/certificate?bowler=Ann");
        Assert.Contains("has thrown all 3 sessions of this program, from 1 September 2026 to 15 September 2026.", certificate, StringComparison.Ordinal);

        // Source: Wilson 1927 for 30 of 30: the lower limit is 30 / (30 + 1.96^2) = 88.6 %; of 10 of 10 it is 10 / (10 + 1.96^2) = 72.2 %.
        Assert.Contains("Holds 1 board at the arrows: 30 of 30 test shots (true rate 89 % to 100 %).", certificate, StringComparison.Ordinal);
        Assert.Contains("Goal of week 3, Ten-shot spread, 50 % of the test shots held: reached, 10 of 10 (true rate 72 % to 100 %).", certificate, StringComparison.Ordinal);
        Assert.Contains("Whether the spread changed is not known: too few sessions with a test.", certificate, StringComparison.Ordinal);
        Assert.Contains("as the record stands on 9 December 2026", certificate, StringComparison.Ordinal);
        Assert.Contains("Ben has done 2 of 3 sessions, and missed 1 that can no longer be made up.", await PageAsync(host, "/groups/tuesday/certificate?bowler=Ben"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Certificate_NoCrossingMeasured_SaysThatNothingIsKnown()
    {
        var clock = new Calendar { Now = Eve.AddDays(1) };
        await using var host = await OpenAsync(clock, "Ann");
        for (var week = 0; week < 3; week++)
        {
            clock.Now = Eve.AddDays((7 * week) + 1);
            await ThrowAsync(host, $"w{week}", measured: false, "Ann");
        }

        var group = await PageAsync(host, "/groups/tuesday");
        var certificate = await PageAsync(host, "/groups/tuesday/certificate?bowler=Ann");

        // Everything is thrown before the last week's end, and the badge is that of the whole program, none of a width.
        Assert.Contains("The program is over: everybody has thrown every session.", group, StringComparison.Ordinal);
        Assert.Contains("3 of 3 all done not known yet Whole program Certificate", group, StringComparison.Ordinal);
        Assert.Contains("has thrown all 3 sessions", certificate, StringComparison.Ordinal);
        Assert.Contains("Width held at the arrows: not known; the crossing of 0 test shots is known, and 30 are needed.", certificate, StringComparison.Ordinal);
        Assert.Contains("50 % of the test shots held: not known, no crossing was measured.", certificate, StringComparison.Ordinal);
        Assert.Contains("Whether the spread changed is not known", certificate, StringComparison.Ordinal);
        Assert.DoesNotContain("Holds", certificate, StringComparison.Ordinal);
    }

    private static async Task<TestHost> OpenAsync(Calendar clock, params string[] bowlers)
    {
        var host = await TestHost.StartAsync(stations: 1, clock: clock);
        Directory.CreateDirectory(Path.Combine(host.Folder, "programs"));
        await File.WriteAllTextAsync(Path.Combine(host.Folder, "programs", "three-tests.json"), Three, Cancelled);
        await GoodAsync(host, "/api/groups", """{"name":"Tuesday","program":"three-tests","starts":"2026-09-01"}""");
        foreach (var bowler in bowlers)
        {
            await GoodAsync(host, "/api/groups/tuesday/members", $$"""{"bowler":"{{bowler}}","station":1}""");
        }

        return host;
    }

    private static Task ThrowAsync(TestHost host, string name, params string[] bowlers) => ThrowAsync(host, name, measured: true, bowlers);

    /// <summary>One drill to its end, by those who are here, in turn.</summary>
    private static async Task ThrowAsync(TestHost host, string name, bool measured, params string[] bowlers)
    {
        string[] everybody = ["Ann", "Ben"];
        var absent = string.Join(',', everybody.Except(bowlers).Select(bowler => $"\"{bowler}\""));
        var answer = await host.Client.PostAsync("/api/groups/tuesday/start", TestHost.Json($$"""{"drill":"ten-shot-spread","absent":[{{absent}}]}"""), Cancelled);
        foreach (var started in (await TestHost.BodyAsync(answer)).EnumerateArray().Select(one => one.GetProperty("sessionId")).Where(id => id.ValueKind == System.Text.Json.JsonValueKind.String))
        {
            await GoodAsync(host, $"/api/stations/1/actions?session={started.GetString()}", """{"kind":"begin"}""");
        }

        for (var shot = 0; shot < ShotsOfADrill * bowlers.Length; shot++)
        {
            await GoodAsync(host, "/api/stations/1/shots", $$"""{"id":"{{name}}-{{shot}}"{{(measured ? ",\"arrowsBoard\":10" : "")}}}""");
        }
    }

    private static async Task GoodAsync(TestHost host, string path, string body)
    {
        var answer = await host.Client.PostAsync(path, TestHost.Json(body), Cancelled);
        Assert.True(answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.Created, await answer.Content.ReadAsStringAsync(Cancelled));
    }

    /// <summary>The words of a page, as somebody reads them.</summary>
    private static async Task<string> PageAsync(TestHost host, string path)
    {
        var html = await host.Client.GetStringAsync(path, Cancelled);
        return Blanks().Replace(WebUtility.HtmlDecode(Tags().Replace(html, "")), " ").Replace(" .", ".", StringComparison.Ordinal);
    }

    /// <summary>A day that the test turns. The host's timers go on as ever: a clock that ran through the days between would fire each of their beats.</summary>
    private sealed class Calendar : TimeProvider
    {
        public required DateTimeOffset Now { get; set; }

        public override DateTimeOffset GetUtcNow() => Now;
    }

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
