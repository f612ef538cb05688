using System.Net;

namespace AimTrainer.Web.Tests;

public sealed class BallApiTests
{
    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Balls_KeptWithTheirSurfaces_AreListed()
    {
        await using var host = await TestHost.StartAsync();
        var kept = await PutAsync(host, """{"bowler":"Ann","name":"Blue One","surface":"2000 grit","weightPounds":15,"radiusOfGyrationInches":2.487,"differentialInches":0.048,"layout":"pin up","gamesSinceSurfaceWork":9}""");
        Assert.Equal(HttpStatusCode.OK, kept.StatusCode);
        var added = await host.Client.PostAsync("/api/balls/surfaces", TestHost.Json("""{"bowler":"ann","ball":"BLUE one","kind":"work","finish":"500 grit","at":"2026-03-07"}"""), Cancelled);
        Assert.Equal(HttpStatusCode.OK, added.StatusCode);

        var ball = Assert.Single((await host.GetAsync("/api/balls?bowler=ANN")).EnumerateArray());
        Assert.Equal(("500 grit", 0, 2.487), (
            ball.GetProperty("details").GetProperty("surface").GetString(), ball.GetProperty("details").GetProperty("gamesSinceSurfaceWork").GetInt32(),
            ball.GetProperty("details").GetProperty("radiusOfGyrationInches").GetDouble()));
        Assert.Equal((9, "work"), (ball.GetProperty("surfaces")[0].GetProperty("games").GetInt32(), ball.GetProperty("surfaces")[0].GetProperty("kind").GetString()));
        Assert.Equal(0, (await host.GetAsync("/api/balls?bowler=Ben")).GetArrayLength());
        Assert.Contains("Blue One", await host.Client.GetStringAsync(new Uri("/balls", UriKind.Relative), Cancelled), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("PUT", "/api/balls", """{"bowler":"Ann"}""", "$: found no \"name\"")]
    [InlineData("PUT", "/api/balls", """{"bowler":"Ann","name":"B","weightPounds":60}""", "$.weightPounds: found 60; allowed: a number, 6 to 16")]
    [InlineData("PUT", "/api/balls", """{"bowler":"Ann","name":"B","colour":"blue"}""", "unknown key \"colour\"")]
    [InlineData("POST", "/api/balls/surfaces", """{"bowler":"Ann","ball":"B","kind":"scan","roughness":3}""", "a scan without a number and its unit")]
    [InlineData("POST", "/api/balls/surfaces", """{"bowler":"Ann","ball":"B","kind":"work","at":"yesterday"}""", "$.at: found \"yesterday\"; allowed: a day such as 2026-03-07")]
    public async Task Ball_BadInput_SaysWhatIsWrong(string method, string path, string json, string said)
    {
        await using var host = await TestHost.StartAsync();
        using var request = new HttpRequestMessage(new HttpMethod(method), path) { Content = TestHost.Json(json) };

        Assert.Contains(said, await TestHost.RefusedAsync(HttpStatusCode.BadRequest, await host.Client.SendAsync(request, Cancelled)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Surface_UnknownBall_IsNotFound()
    {
        await using var host = await TestHost.StartAsync();
        var answer = await host.Client.PostAsync("/api/balls/surfaces", TestHost.Json("""{"bowler":"Ann","ball":"B","kind":"work"}"""), Cancelled);

        Assert.Contains("allowed: a ball in the record", await TestHost.RefusedAsync(HttpStatusCode.NotFound, answer), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[]", "no ball is chosen for")]
    [InlineData("""[{"role":"reference","name":"Blue"},{"role":"other","name":"BLUE"}]""", "are the same ball")]
    [InlineData("""[{"role":"reference","name":"Blue"}]""", "no ball is chosen for \"other\"")]
    public async Task Start_ComparisonWithBallsThatDoNotFit_IsRefused(string balls, string said)
    {
        await using var host = await TestHost.StartAsync();

        Assert.Contains(said, await TestHost.RefusedAsync(HttpStatusCode.Conflict, await StartAsync(host, balls)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Live_Comparison_SaysWhoThrowsAndTheBowlerSeesNoMoreThanIsTold()
    {
        await using var host = await TestHost.StartAsync();
        Assert.Equal(HttpStatusCode.Created, (await StartAsync(host, """[{"role":"reference","name":"Blue"},{"role":"other","name":"Red"}]""")).StatusCode);
        await host.Client.PostAsync("/api/stations/1/actions", TestHost.Json("""{"kind":"begin"}"""), Cancelled);
        await host.Client.PostAsync("/api/stations/1/shots", TestHost.Json("""{"id":"a","crossings":[{"feet":15,"board":10},{"feet":42,"board":6}]}"""), Cancelled);

        var station = await host.GetAsync("/api/stations/1");
        var turn = station.GetProperty("turn");
        Assert.Equal(("Red", 1, 3), (turn.GetProperty("due").GetProperty("name").GetString(), turn.GetProperty("line").GetInt32(), turn.GetProperty("lines").GetInt32()));
        Assert.Equal([1, 0], turn.GetProperty("balls").EnumerateArray().Select(cell => cell.GetProperty("good").GetInt32()));
        Assert.Equal([1], station.GetProperty("lastOfEach").EnumerateArray().Select(shot => shot.GetProperty("number").GetInt32()));
        var started = await host.GetAsync("/api/bowlers");
        Assert.Equal(["Blue", "Red"], started[0].GetProperty("balls").EnumerateArray().Select(ball => ball.GetString()));
    }

    private static Task<HttpResponseMessage> StartAsync(TestHost host, string balls) => host.Client.PostAsync(
        "/api/stations/1/sessions", TestHost.Json($$"""{"bowler":"Ann","drill":"two-balls-by-eye","balls":{{balls}}}"""), Cancelled);

    private static Task<HttpResponseMessage> PutAsync(TestHost host, string json) => host.Client.PutAsync(new Uri("/api/balls", UriKind.Relative), TestHost.Json(json), Cancelled);
}
