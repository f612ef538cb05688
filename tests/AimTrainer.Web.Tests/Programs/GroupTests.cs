using System.IO.Compression;
using System.Net;
using System.Text;

namespace AimTrainer.Web.Tests;

public sealed class GroupTests
{
    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Group_FromMakingToTurns_EachShotIsTheThrowersAndARestartGoesOn()
    {
        await using var host = await TestHost.StartAsync(stations: 2);
        await GroupAsync(host, "league-player", "Ann Lee", "Ben");
        Assert.Equal(HttpStatusCode.OK, await PostAsync(host, "/api/groups/tuesday/lanes", """{"lanes":[2]}"""));
        var started = await TestHost.BodyAsync(await host.Client.PostAsync("/api/groups/tuesday/start", TestHost.Json("""{"drill":"ten-shot-spread"}"""), Cancelled));
        var sessions = started.EnumerateArray().Select(one => one.GetProperty("sessionId").GetString()!).ToList();
        Assert.Equal(2, sessions.Count);
        foreach (var session in sessions)
        {
            Assert.Equal(HttpStatusCode.OK, await PostAsync(host, $"/api/stations/2/actions?session={session}", """{"kind":"begin"}"""));
        }

        await host.ShotAsync("a1", station: 2);
        await host.ShotAsync("b1", station: 2);
        await host.ShotAsync("a2", station: 2);

        // The answer to a shot that is sent again is the first one, though the turn has passed on.
        var again = await TestHost.BodyAsync(await host.ShotAsync("a1", station: 2));
        Assert.Equal(1, again.GetProperty("number").GetInt32());
        await host.RestartAsync();
        await host.ShotAsync("b2", station: 2);

        var station = await host.GetAsync("/api/stations/2");
        var places = station.GetProperty("turns").GetProperty("places").EnumerateArray().ToList();
        Assert.Equal([2, 2], places.Select(place => place.GetProperty("shots").GetInt32()));
        Assert.Equal(("Ann Lee", "A. L.", true), (places[0].GetProperty("bowler").GetString(), places[0].GetProperty("screenName").GetString(), places[0].GetProperty("isNow").GetBoolean()));
        var listed = (await host.GetAsync("/api/sessions?bowler=Ben"))[0];
        Assert.Equal(2, listed.GetProperty("shots").GetInt32());
    }

    [Fact]
    public async Task Start_DrillThatComparesBalls_AsksForThemInWordsAndKeepsThemForTheNextTime()
    {
        await using var host = await TestHost.StartAsync(stations: 1);
        await GroupAsync(host, "ball-comparison-clinic", "Ann", "Ben", "Cy");
        await PostAsync(host, "/api/groups/tuesday/lanes", """{"lanes":[1]}""");
        const string Balls = """{"bowler":"ann","role":"reference","name":" Red "},{"bowler":"Ann","role":"other","name":"Blue"},{"bowler":"Cy","role":"reference","name":"Old"},{"bowler":"Cy","role":"other","name":"OLD"}""";

        // Who named her balls throws; the others are told what is missing or wrong, and hold up nobody.
        var first = await StartAsync(host, $$"""{"drill":"two-balls-one-line","balls":[{{Balls}}]}""");
        Assert.Equal(["Ann", "Ben", "Cy"], first.Select(one => one.Bowler));
        Assert.Equal((true, false, false), (first[0].Started, first[1].Started, first[2].Started));
        Assert.Equal("this drill compares balls, and no ball is chosen for \"reference\", \"other\": name a ball for each of reference, other", first[1].Why);
        Assert.Contains("are the same ball", first[2].Why, StringComparison.Ordinal);
        await PostAsync(host, "/api/stations/1/actions", """{"kind":"begin"}""");
        Assert.Equal("Red", (await host.GetAsync("/api/stations/1")).GetProperty("turn").GetProperty("due").GetProperty("name").GetString());

        // The next time nobody who named hers is asked again, also after a restart and another lane.
        await PostAsync(host, "/api/stations/1/actions", """{"kind":"end"}""");
        await host.RestartAsync();
        Assert.Equal(HttpStatusCode.OK, await PostAsync(host, "/api/groups/tuesday/members", """{"bowler":"Ann","station":1}"""));
        var second = await StartAsync(host, """{"drill":"two-balls-by-eye","absent":["Cy"],"balls":[{"bowler":"Ben","role":"reference","name":"One"},{"bowler":"Ben","role":"other","name":"Two"}]}""");
        Assert.Equal((true, true), (second[0].Started, second[1].Started));

        // A drill that compares nothing takes none, and is not troubled by those that were kept.
        Assert.Equal(HttpStatusCode.BadRequest, await PostAsync(host, "/api/groups/tuesday/start", $$"""{"drill":"ten-shot-spread","balls":[{{Balls}}]}"""));
        Assert.Equal(HttpStatusCode.BadRequest, await PostAsync(host, "/api/groups/tuesday/start", """{"drill":"two-balls-by-eye","balls":[{"bowler":"Di","role":"reference","name":"x"}]}"""));
        await PostAsync(host, "/api/stations/1/actions", """{"kind":"end"}""");
        await PostAsync(host, "/api/stations/1/actions", """{"kind":"end"}""");
        Assert.All(await StartAsync(host, """{"drill":"ten-shot-spread"}"""), one => Assert.True(one.Started, one.Why));
    }

    [Fact]
    public async Task Turns_OverTheApi_GiveSkipAndRefuseWhatWasSeenBefore()
    {
        await using var host = await TestHost.StartAsync(stations: 1);
        await host.StartSessionAsync();
        Assert.Equal(HttpStatusCode.Created, await PostAsync(host, "/api/stations/1/bowlers", """{"bowler":"Ben","drill":"ten-shot-spread"}"""));
        var turns = (await host.GetAsync("/api/stations/1")).GetProperty("turns");
        var ben = turns.GetProperty("places")[1].GetProperty("sessionId").GetString();
        var seen = turns.GetProperty("number").GetInt32();

        Assert.Equal(HttpStatusCode.OK, await PostAsync(host, "/api/stations/1/turns", $$"""{"kind":"give","session":"{{ben}}","seen":{{seen}}}"""));
        Assert.Equal("Ben", (await host.GetAsync("/api/stations/1")).GetProperty("bowler").GetString());
        Assert.Equal(HttpStatusCode.Conflict, await PostAsync(host, "/api/stations/1/turns", $$"""{"kind":"skip","seen":{{seen}}}"""));
        Assert.Equal(HttpStatusCode.BadRequest, await PostAsync(host, "/api/stations/1/turns", """{"kind":"dance"}"""));
        Assert.Equal(HttpStatusCode.Conflict, await PostAsync(host, "/api/stations/1/turns", """{"kind":"leave","session":"nobody"}"""));
    }

    [Fact]
    public async Task Member_UnderAge_JoinsOnlyWithAGuardianAndIsNeverShownByFullName()
    {
        await using var host = await TestHost.StartAsync();
        await GroupAsync(host, "juniors");
        await PostAsync(host, "/api/people/agreed", """{"bowler":"Kim Roe","minor":true}""");
        var refused = await host.Client.PostAsync("/api/groups/tuesday/members", TestHost.Json("""{"bowler":"Kim Roe"}"""), Cancelled);
        Assert.Contains("guardian", await TestHost.RefusedAsync(HttpStatusCode.Conflict, refused), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, await PostAsync(host, "/api/people/agreed", """{"bowler":"Kim Roe","minor":true,"guardian":"Lou Roe","shown":"fullName"}"""));
        Assert.Equal(HttpStatusCode.OK, await PostAsync(host, "/api/people/agreed", """{"bowler":"Kim Roe","minor":true,"guardian":"Lou Roe","shown":"givenName"}"""));
        Assert.Equal(HttpStatusCode.OK, await PostAsync(host, "/api/groups/tuesday/members", """{"bowler":"Kim Roe","station":1}"""));
        Assert.Equal(HttpStatusCode.Conflict, await PostAsync(host, "/api/groups/tuesday/members", """{"bowler":"Old Hand"}"""));
        await PostAsync(host, "/api/groups/tuesday/start", """{"drill":"ten-shot-spread"}""");

        // A bowler's phone gets the name as screens may show it, and nothing of the record's.
        Assert.Equal("Kim", StationView.ForBowler(Live(host).Find(1)!.Station.Snapshot).Bowler);
        Assert.Equal("Kim", Assert.Single(StationView.ForBowler(Live(host).Find(1)!.Station.Snapshot).Turns!.Places).ScreenName);
    }

    [Fact]
    public async Task Needs_ASoreArm_IsFirstAndTheUnknownIsSaidToBe()
    {
        await using var host = await TestHost.StartAsync();
        await host.StartSessionAsync(1);
        await host.StartSessionAsync(2, host.Client);
        await PostAsync(host, "/api/stations/2/actions", """{"kind":"note","text":"Arm sore: the wrist"}""");

        var needs = (await host.GetAsync("/api/needs")).EnumerateArray().ToList();

        Assert.Equal([2, 1], needs.Select(need => need.GetProperty("station").GetInt32()));
        Assert.Equal("sore", needs[0].GetProperty("reasons")[0].GetString());
        Assert.Contains("not known yet (0 of 20 shots", needs[1].GetProperty("words")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Erase_ABowler_IsGoneFromTheFolderAndTheLane_AndTheAuditNamesNobody()
    {
        await using var host = await TestHost.StartAsync();
        await PostAsync(host, "/api/people/agreed", """{"bowler":"Xanthippe","shown":"fullName"}""");
        await GroupAsync(host, "league-player", "Xanthippe", "Ben");
        await PostAsync(host, "/api/groups/tuesday/lanes", """{"lanes":[1]}""");
        await PostAsync(host, "/api/groups/tuesday/start", """{"drill":"ten-shot-spread"}""");
        Assert.NotEmpty(FilesWith(host.Folder, "Xanthippe"));
        var export = await host.Client.PostAsync("/api/people/export", TestHost.Json("""{"bowler":"xanthippe"}"""), Cancelled);
        using (var zip = new ZipArchive(await export.Content.ReadAsStreamAsync(Cancelled)))
        {
            Assert.Contains(zip.Entries, entry => entry.FullName == "bowler.json");
            Assert.Contains(zip.Entries, entry => entry.FullName.EndsWith("/log.jsonl", StringComparison.Ordinal));
        }

        var open = await host.Client.PostAsync("/api/people/erase", TestHost.Json("""{"bowler":"Xanthippe","again":"Xanthippe"}"""), Cancelled);
        Assert.Contains("is open on lane 1", await TestHost.RefusedAsync(HttpStatusCode.Conflict, open), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, await PostAsync(host, "/api/people/erase", """{"bowler":"Xanthippe","again":"Ben"}"""));
        await PostAsync(host, "/api/stations/1/actions", """{"kind":"end"}""");

        var erased = await TestHost.BodyAsync(await host.Client.PostAsync("/api/people/erase", TestHost.Json("""{"bowler":"Xanthippe","again":"xanthippe"}"""), Cancelled));

        Assert.Single(erased.GetProperty("sessions").EnumerateArray());
        Assert.Empty(FilesWith(host.Folder, "Xanthippe"));
        Assert.DoesNotContain("Xanthippe", (await host.GetAsync("/api/stations")).GetRawText(), StringComparison.OrdinalIgnoreCase);
        Assert.Contains($"erasure {erased.GetProperty("id").GetString()}: 1 sessions of one bowler", await File.ReadAllTextAsync(Path.Combine(host.Folder, "audit.jsonl"), Cancelled), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, await PostAsync(host, "/api/people/erase", """{"bowler":"Xanthippe","again":"Xanthippe"}"""));

        // Ben, on the same lane, goes on.
        Assert.Equal("Ben", (await host.GetAsync("/api/stations/1")).GetProperty("bowler").GetString());
    }

    private static async Task<List<(string Bowler, bool Started, string? Why)>> StartAsync(TestHost host, string body)
    {
        var answer = await TestHost.BodyAsync(await host.Client.PostAsync("/api/groups/tuesday/start", TestHost.Json(body), Cancelled));
        return [.. answer.EnumerateArray().Select(one => (one.GetProperty("bowler").GetString()!, one.GetProperty("sessionId").GetString() is not null, one.GetProperty("why").GetString()))];
    }

    private static LiveStations Live(TestHost host) => (LiveStations)host.Services.GetService(typeof(LiveStations))!;

    private static async Task GroupAsync(TestHost host, string program, params string[] bowlers)
    {
        Assert.Equal(HttpStatusCode.Created, await PostAsync(host, "/api/groups", $$"""{"name":"Tuesday","program":"{{program}}","starts":"2026-09-01"}"""));
        foreach (var bowler in bowlers)
        {
            Assert.Equal(HttpStatusCode.OK, await PostAsync(host, "/api/groups/tuesday/members", $$"""{"bowler":"{{bowler}}"}"""));
        }
    }

    private static async Task<HttpStatusCode> PostAsync(TestHost host, string path, string body) =>
        (await host.Client.PostAsync(path, TestHost.Json(body), Cancelled)).StatusCode;

    private static List<string> FilesWith(string folder, string word) =>
        [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Where(file => !file.EndsWith(".lock", StringComparison.Ordinal)).Where(file =>
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return Encoding.Latin1.GetString(bytes.ToArray()).Contains(word, StringComparison.OrdinalIgnoreCase);
        })];
}
