using System.Net;
using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Motion;
using Json.Schema;

namespace AimTrainer.Web.Tests;

public sealed class PlanApiTests : IAsyncLifetime
{
    private const string Release = """{"hand":"right","laydownBoard":23,"launchAngleDeg":3,"speedMps":7.6,"revsRpm":330,"axisRotationDeg":50,"axisTiltDeg":12}""";

    private const string Bowler = """
        {"hand":"right","speedMph":17,"revsRpm":330,"axisRotationDeg":50,"spread":{"laydownBoards":0.5,"launchAngleDeg":0.2,"speedMph":0.3,"revsRpm":10}}
        """;

    private const string SmallGrid = """ "window":{"lowBoard":17,"highBoard":18,"lowAngleDeg":2,"highAngleDeg":6},"grid":{"firstBoard":20,"lastBoard":26,"boardStep":1,"firstAngleDeg":2,"lastAngleDeg":4,"angleStepDeg":0.5} """;

    private TestHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await TestHost.StartAsync();

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task Path_OfTheInventedLane_IsTheLibrarysOwn()
    {
        var answer = await PostAsync("path", $$"""{"release":{{Release}} }""");
        var traced = Paths.Trace(InventedLane.House(), Ball.Usual, new Release(Hand.Right, 23, 3, 7.6, 330) { AxisRotationDegrees = 50, AxisTiltDegrees = 12 });

        Assert.Equal(JsonSerializer.Serialize(PathAnswer.Of(traced), WebJson.Options), await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.True(await HoldsAsync("PathAnswer", answer));
    }

    [Fact]
    public async Task Lane_WithAFit_IsStretchedAndHasItsFrictions()
    {
        var map = await BodyAsync("lane", """{"fit":{"oilFriction":0.04,"dryFriction":0.25,"patternFeet":36,"covariance":[[0,0,0],[0,0,0],[0,0,0]]}}""");

        Assert.Equal((36, 5, 0.04), (map.GetProperty("patternFeet").GetDouble(), map.GetProperty("exitBoard").GetDouble(), map.GetProperty("oilFriction").GetDouble()));
        Assert.Equal((61, 39), (map.GetProperty("units").GetArrayLength(), map.GetProperty("units")[0].GetArrayLength()));
        Assert.Equal(0, map.GetProperty("units")[36][19].GetDouble());
        Assert.True(await HoldsAsync("LaneMap", await PostAsync("lane", "{}")));
    }

    [Fact]
    public async Task Line_ThereAndBack_IsTheSame()
    {
        var there = await BodyAsync("line", """{"hand":"left","line":"20@15 10@42","patternFeet":40}""");
        Assert.Equal((25.5556, 1.881), (there.GetProperty("laydownBoard").GetDouble(), there.GetProperty("launchAngleDeg").GetDouble()));
        var angle = Math.Atan2((25.5556 - 20) * 41.5 / 39, 15 * 12) * 180 / Math.PI;
        var back = await BodyAsync("line", FormattableString.Invariant($$"""{"hand":"left","laydownBoard":25.5556,"launchAngleDeg":{{angle}},"downlaneFeet":42}"""));

        Assert.Equal("20@15 10@42", back.GetProperty("line").GetString());

        // Source: length less 31, common practice; 2-and-1 shifts 2 at the foul line, 1 at the arrows, 0 at 30 ft: arithmetic.
        Assert.Equal(9, there.GetProperty("exit").GetProperty("board").GetDouble());
        var move = there.GetProperty("moves").EnumerateArray().Single(one => one.GetProperty("name").GetString() == "2-and-1").GetProperty("shifts");
        Assert.Equal([2, 1, 0], new[] { 0, 3, 6 }.Select(at => move[at].GetProperty("boards").GetDouble()));
    }

    [Theory]
    [InlineData("path", """{"release":{"hand":"right","laydownBoard":99,"launchAngleDeg":3,"speedMps":7.6,"revsRpm":330,"axisRotationDeg":50}}""", "$.release.laydownBoard: found 99; allowed: a number, 0.5 to 39.5")]
    [InlineData("path", """{"release":{"hand":"right","laydownBoard":20,"launchAngleDeg":3,"speedMps":7.6,"axisRotationDeg":95}}""", "$.release.axisRotationDeg: found 95; allowed: a number, -90 to 90")]
    [InlineData("path", """{"release":{"hand":"right","laydownBoard":NaN,"launchAngleDeg":3,"speedMps":7.6,"revsRpm":330,"axisRotationDeg":50}}""", "found")]
    [InlineData("path", """{"lane":{"mu":0.2}}""", "$: found no \"release\"")]
    [InlineData("lane", """{"lane":{"mu_dry":0.2,"mu_oil":0.03,"u0":6,"rows":[]}}""", "$.lane.rows: found a list of 0; allowed: a list of 1 to 200 rows")]
    [InlineData("lane", """{"lane":{"mu":7}}""", "$.lane.mu: found 7; allowed: a number, 0 to 0.6")]
    [InlineData("lane", """{"lane":3}""", "$.lane: found 3; allowed: an object")]
    [InlineData("lane", """{"fit":{"oilFriction":0.04}}""", "$.fit: found no \"dryFriction\"")]
    [InlineData("line", """{"hand":"right","line":"10@42 20@15"}""", "$.line: found 20@15 after 10@42; allowed: targets that lie farther and farther down")]
    [InlineData("line", """{"hand":"right"}""", "exactly one of them")]
    [InlineData("line", """{"hand":"right","line":"39@15 1@15.1"}""", "runs too far across the lane")]
    [InlineData("aim", """{}""", "$: found no \"bowler\"")]
    [InlineData("drill", """{"arrowsBoard":15,"arrowsFeet":15,"downlaneBoard":8}""", "$: found no \"downlaneFeet\"")]
    [InlineData("fit", """{"session":"none","keepOil":1}""", "$.keepOil: found 1; allowed: true or false")]
    public async Task Body_Wrong_IsRefusedWithItsPlace(string call, string body, string message) =>
        Assert.Contains(message, await TestHost.RefusedAsync(HttpStatusCode.BadRequest, await PostAsync(call, body)), StringComparison.Ordinal);

    [Fact]
    public async Task Aim_WindowAndGridWrong_AreRefusedWithTheirPlaces()
    {
        var said = await TestHost.RefusedAsync(HttpStatusCode.BadRequest, await PostAsync("aim",
            $$"""{"bowler":{{Bowler}},"window":{"lowBoard":18,"highBoard":17,"lowAngleDeg":4,"highAngleDeg":6},"grid":{"firstBoard":1,"lastBoard":39,"boardStep":0.1,"firstAngleDeg":-9,"lastAngleDeg":9,"angleStepDeg":0.05} }"""));

        Assert.Contains("$.window: found a window of boards 18 to 17; allowed: two that rise", said, StringComparison.Ordinal);
        Assert.Contains("$.grid: found 137541 lines; allowed: 4000", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task LaneCheck_AMistake_IsToldWithItsLine()
    {
        var read = await BodyAsync("lane/check", "{ \"mu_dry\": 0.2, \"mu_oil\": 0.03, \"u0\": 6,\n  \"passes\": [\n { \"from_board\": 2, \"to_board\": 48, \"start_ft\": 0, \"end_ft\": 40, \"units\": 6 } ] }");

        Assert.False(read.GetProperty("good").GetBoolean());
        Assert.Equal((3, "$.passes[0].to_board"), (read.GetProperty("problems")[0].GetProperty("line").GetInt32(), read.GetProperty("problems")[0].GetProperty("path").GetString()));
    }

    [Fact]
    public async Task Aim_AStream_TellsProgressAndTheLibrarysAdvice()
    {
        var events = await EventsAsync("aim", $$"""{"bowler":{{Bowler}},{{SmallGrid}} }""");

        Assert.Equal("progress", events[0].Name);
        var (name, answer) = events[^1];
        Assert.Equal("answer", name);
        var bowler = new AimBowler(Hand.Right, 17, 330, 50, Scatter.Of([0.5, 0.2, 0.3, 10]));
        var advice = AimAdvisor.Advise(LaneBelief.Exactly(InventedLane.House()), Ball.Usual, bowler, new AimSettings { Window = new PocketWindow(17, 18, 2, 6), Grid = new AimGrid(20, 26, 1, 2, 4, 0.5) }, null, TestContext.Current.CancellationToken);
        Assert.Equal(advice.Best.Chance, answer.GetProperty("best").GetProperty("chance").GetDouble(), 9);
        Assert.Equal(advice.Map.Count, answer.GetProperty("map").GetArrayLength());
    }

    [Fact]
    public async Task Aim_AskedAgainByTheSameVisitor_StopsTheFirst()
    {
        var first = EventsAsync("aim", $$"""{"bowler":{{Bowler}},"grid":{"firstBoard":1,"lastBoard":39,"boardStep":0.5,"firstAngleDeg":-2,"lastAngleDeg":6,"angleStepDeg":0.2} }""", out var begun);
        await begun;
        var second = await EventsAsync("aim", $$"""{"bowler":{{Bowler}},{{SmallGrid}} }""");

        Assert.Equal("answer", second[^1].Name);
        var (name, why) = (await first)[^1];
        Assert.Equal("stopped", name);
        Assert.Contains("took its place", why.GetProperty("why").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fit_ASessionThatCannotBeFitted_SaysWhy()
    {
        var session = await _host.StartSessionAsync();
        await _host.ShotAsync("a", 10.4);

        Assert.Contains("found \"none\"", await TestHost.RefusedAsync(HttpStatusCode.NotFound, await PostAsync("fit", """{"session":"none"}""")), StringComparison.Ordinal);
        Assert.Contains(
            "shot 1: speed, revs, axis rotation, axis tilt not measured; take the throw of the plan",
            await TestHost.RefusedAsync(HttpStatusCode.Conflict, await PostAsync("fit", $$"""{"session":"{{session}}"}""")), StringComparison.Ordinal);
        Assert.Contains("1 crossings; allowed: 3 or more", await TestHost.RefusedAsync(HttpStatusCode.Conflict, await PostAsync("fit", $$"""{"session":"{{session}}","bowler":{{Bowler}} }""")), StringComparison.Ordinal);
        var crossings = await _host.GetAsync($"/api/plan/crossings/{session}");
        Assert.Equal(10.4, crossings.GetProperty("shots")[0].GetProperty("places")[0].GetProperty("board").GetDouble());
    }

    [Fact]
    public async Task Scatter_TooFewShotsOrNobody_SaysWhatIsNeeded()
    {
        await _host.StartSessionAsync();
        await _host.ShotAsync("a", 10.4);

        Assert.Contains("needed: 20; allowed: give speed, revs and spreads by hand", await RefusedGetAsync(HttpStatusCode.Conflict, "scatter/Ann"), StringComparison.Ordinal);
        Assert.Contains("found \"Nobody\"", await RefusedGetAsync(HttpStatusCode.NotFound, "scatter/Nobody"), StringComparison.Ordinal);
        Assert.Contains("rotation -90 to 90", await RefusedGetAsync(HttpStatusCode.BadRequest, "scatter/Ann?axisRotationDeg=100"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("laydown", "narrow-at-arrow")]
    [InlineData("launchAngle", "two-point-line")]
    [InlineData("speed", "set-line-set-speed")]
    [InlineData("revs", "same-throw")]
    public async Task Drill_OfALine_IsOneWithItsTargets(string practise, string shipped)
    {
        var made = await BodyAsync(
            "drill", $$"""{"practise":"{{practise}}","arrowsBoard":15.34,"arrowsFeet":15,"downlaneBoard":8.01,"downlaneFeet":40,"laydownBoard":23,"launchAngleDeg":3,"speedMph":17.02,"revsRpm":330}""");

        var id = made.GetProperty("id").GetString()!;
        Assert.Equal($"{shipped}-15-3-at-15-8-at-40", id);
        var text = await _host.Client.GetByteArrayAsync($"/api/drills/{id}", TestContext.Current.CancellationToken);
        var drill = DrillReader.Read(id, text).Value!;
        Assert.Empty(DrillResolver.Resolve(drill.Blocks[0], new DrillSetting(Hand.Right, LaneProfileReader.Default, null, null)).Problems);
        var raw = JsonDocument.Parse(text).RootElement.GetProperty("blocks")[0];
        var aim = raw.GetProperty("aims")[0];
        var place = aim.TryGetProperty("line", out var line) ? line[0] : aim;
        Assert.Equal((15.3, 15), (place.GetProperty("board").GetDouble(), place.GetProperty("feet").GetDouble()));
        if (practise == "speed")
        {
            Assert.Equal(17, raw.GetProperty("comparable").GetProperty("expect").GetProperty("speedMph").GetDouble());
            Assert.Equal(23, raw.GetProperty("comparable").GetProperty("expect").GetProperty("laydownBoard").GetDouble());
        }
    }

    [Fact]
    public async Task Audit_WhatOnlyComputes_LeavesNoLineAndADrillLeavesOne()
    {
        await PostAsync("path", $$"""{"release":{{Release}} }""");
        await PostAsync("lane", "{}");
        await BodyAsync("drill", """{"arrowsBoard":15,"arrowsFeet":15,"downlaneBoard":8,"downlaneFeet":40}""");

        var lines = await File.ReadAllLinesAsync(Path.Combine(_host.Folder, "audit.jsonl"), TestContext.Current.CancellationToken);
        var line = Assert.Single(lines);
        Assert.Contains("made of a line", line, StringComparison.Ordinal);
    }

    [Fact]
    public void Work_ManyVisitors_OneTurnEachAndSoManyAtMost()
    {
        using var work = new PlanWork();
        var turns = Enumerable.Range(0, PlanWork.MostAtOnce).Select(i => work.Enter($"{i}")!).ToList();

        Assert.Null(work.Enter("one more"));
        using var again = work.Enter("0")!;
        Assert.True(turns[0].Replaced.IsCancellationRequested);
        Assert.False(turns[1].Replaced.IsCancellationRequested);
        turns[0].Dispose();
        Assert.Null(work.Enter("one more"));
        turns[1].Dispose();
        Assert.NotNull(work.Enter("one more"));
    }

    [Theory]
    [InlineData("PlanPath", "path", $$"""{"release":{{Release}},"ball":{"massLb":15,"diameterIn":8.55,"radiusOfGyrationIn":2.5} }""", true)]
    [InlineData("PlanPath", "path", $$"""{"release":{{Release}},"oil":3}""", false)]
    [InlineData("PlanLine", "line", """{"hand":"right","line":"20@15 10@42","walk":"angle"}""", true)]
    [InlineData("PlanLine", "line", """{"hand":"right","line":"20@15 10@42","laydownBoard":20}""", false)]
    [InlineData("PlanLine", "line", """{"hand":"right","laydownBoard":20,"launchAngleDeg":2,"patternFeet":90}""", false)]
    [InlineData("PlanDrill", "drill", """{"practise":"luck","arrowsBoard":15,"arrowsFeet":15,"downlaneBoard":8,"downlaneFeet":40}""", false)]
    public async Task Schema_OfABody_SaysWhatTheHostSays(string schema, string call, string body, bool good)
    {
        var answer = await PostAsync(call, body);

        Assert.Equal(good, answer.StatusCode == HttpStatusCode.OK);
        Assert.Equal(good, await HoldsAsync(schema, body));
    }

    private Task<HttpResponseMessage> PostAsync(string call, string body) => _host.Client.PostAsync($"/api/plan/{call}", TestHost.Json(body), TestContext.Current.CancellationToken);

    private async Task<JsonElement> BodyAsync(string call, string body)
    {
        var answer = await PostAsync(call, body);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        return await TestHost.BodyAsync(answer);
    }

    private async Task<string> RefusedGetAsync(HttpStatusCode status, string path) =>
        await TestHost.RefusedAsync(status, await _host.Client.GetAsync($"/api/plan/{path}", TestContext.Current.CancellationToken));

    private Task<List<(string Name, JsonElement Data)>> EventsAsync(string call, string body) => EventsAsync(call, body, out _);

    /// <summary>All events of an answer, and a task that is done with the first of them.</summary>
    private Task<List<(string Name, JsonElement Data)>> EventsAsync(string call, string body, out Task begun)
    {
        var first = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        begun = first.Task;
        return ReadAsync();

        async Task<List<(string, JsonElement)>> ReadAsync()
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, $"/api/plan/{call}") { Content = TestHost.Json(body) };
            using var answer = await _host.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
            Assert.Equal("text/event-stream", answer.Content.Headers.ContentType?.MediaType);
            using var reader = new StreamReader(await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken));
            var (events, name) = (new List<(string, JsonElement)>(), "");
            while (await reader.ReadLineAsync(TestContext.Current.CancellationToken) is { } line)
            {
                if (line.StartsWith("event: ", StringComparison.Ordinal))
                {
                    name = line[7..];
                }
                else if (line.StartsWith("data: ", StringComparison.Ordinal))
                {
                    events.Add((name, JsonDocument.Parse(line[6..]).RootElement));
                    first.TrySetResult();
                }
            }

            return events;
        }
    }

    private async Task<bool> HoldsAsync(string schema, HttpResponseMessage answer) =>
        await HoldsAsync(schema, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

    private async Task<bool> HoldsAsync(string schema, string body) => JsonSchema
        .FromText((await _host.GetAsync("/openapi/v1.json")).GetProperty("components").GetProperty("schemas").GetProperty(schema).GetRawText())
        .Evaluate(JsonDocument.Parse(body).RootElement).IsValid;
}
