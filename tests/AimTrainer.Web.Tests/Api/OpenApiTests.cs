using System.Net;
using System.Text.Json;
using Json.Schema;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.OpenApi;

namespace AimTrainer.Web.Tests;

public sealed class OpenApiTests : IAsyncLifetime
{
    private TestHost _host = null!;
    private JsonElement _document;

    public async ValueTask InitializeAsync()
    {
        _host = await TestHost.StartAsync();
        _document = await _host.GetAsync("/openapi/v1.json");
    }

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public void Document_ReadByTheLibrary_HasNoMistake()
    {
        var read = OpenApiDocument.Parse(_document.GetRawText(), "json");

        Assert.Empty(read.Diagnostic!.Errors);
        Assert.Empty(read.Diagnostic.Warnings);
        Assert.StartsWith("3.1", _document.GetProperty("openapi").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Document_EveryRouteOfTheApi_IsDescribed()
    {
        var routes = _host.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(route => route.RoutePattern.RawText!.StartsWith("/api", StringComparison.Ordinal))
            .SelectMany(route => route.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods.Select(method => (Path(route), Method: method.ToLowerInvariant()))).ToList();

        Assert.True(routes.Count >= 25, $"{routes.Count} routes");
        foreach (var (path, method) in routes)
        {
            var call = default(JsonElement);
            Assert.True(_document.GetProperty("paths").TryGetProperty(path, out var item) && item.TryGetProperty(method, out call), $"{method} {path} is not described");
            Assert.True(call.TryGetProperty("summary", out _), $"{method} {path} has no summary");
            Assert.Contains(call.GetProperty("responses").EnumerateObject(), answer => answer.Name is "200" or "201");
            Assert.Equal(method is "post" or "put" && !path.EndsWith("sign-out", StringComparison.Ordinal) && !path.StartsWith("/api/projection/", StringComparison.Ordinal), call.TryGetProperty("requestBody", out _));
        }

        static string Path(RouteEndpoint route) => route.RoutePattern.RawText!.Replace(":int", "", StringComparison.Ordinal).TrimEnd('/');
    }

    [Theory]
    [InlineData("Shot", """{"id":"a1","time":"2026-03-01T18:05:09+01:00","crossings":[{"feet":15,"board":12.5}],"speedMph":17,"speedAt":"release","pins":9}""", true)]
    [InlineData("Shot", """{"id":"a1","crossing":[]}""", false)]
    [InlineData("Shot", """{"id":"a1","crossings":[{"feet":61,"board":12.5}]}""", false)]
    [InlineData("Shot", """{"crossings":[{"feet":15,"board":12.5}]}""", false)]
    [InlineData("Action", """{"kind":"void","number":1,"reason":"slipped","id":"v1"}""", true)]
    [InlineData("Action", """{"kind":"void","number":0,"reason":"slipped"}""", false)]
    [InlineData("Action", """{"kind":"dance"}""", false)]
    [InlineData("Action", """{"kind":"correct","number":1,"shot":{"arrowsBoard":11}}""", true)]
    [InlineData("SessionRequest", """{"bowler":"Ben","drill":"three-rings","patternFeet":42}""", true)]
    [InlineData("SessionRequest", """{"bowler":"Ben","drill":"three-rings","patternFeet":10}""", false)]
    public async Task Schema_OfABody_SaysWhatTheHostSays(string schema, string body, bool good)
    {
        // The schema and the reader by hand must not part: both look at the same body.
        await _host.StartSessionAsync();
        await _host.ShotAsync("first");
        var path = schema switch { "Shot" => "/api/stations/1/shots", "Action" => "/api/stations/1/actions", _ => "/api/stations/2/sessions" };
        var answer = await _host.Client.PostAsync(path, TestHost.Json(body), TestContext.Current.CancellationToken);

        Assert.Equal(good, answer.StatusCode != HttpStatusCode.BadRequest);
        Assert.Equal(good, Holds(schema, body));
    }

    [Fact]
    public async Task Schema_OfAnAnswer_IsWhatIsSent()
    {
        var session = await _host.StartSessionAsync();
        var shot = await (await _host.ShotAsync("a", 10.4)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var voided = TestHost.Json("""{"kind":"void","number":1,"reason":"slipped"}""");
        var action = await (await _host.Client.PostAsync("/api/stations/1/actions", voided, TestContext.Current.CancellationToken))
            .Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var sent = new (string Schema, string Body)[]
        {
            ("ShotAnswer", shot), ("ActionAnswer", action), ("Station", await TextAsync("/api/stations/1")), ("Stations", await TextAsync("/api/stations")),
            ("Sessions", await TextAsync("/api/sessions")), ("SessionRecord", await TextAsync($"/api/sessions/{session}")), ("Drills", await TextAsync("/api/drills")),
            ("Drill", await TextAsync("/api/drills/three-rings")), ("Bowlers", await TextAsync("/api/bowlers")), ("Bowler", await TextAsync("/api/bowlers/Ann")),
            ("AccessAnswer", await TextAsync("/api/access")), ("Pairings", await TextAsync("/api/access/pairings")), ("Feeds", await TextAsync("/api/access/feeds")),
            ("Problem", await TextAsync("/api/stations/99")), ("Problem", await TextAsync("/api/nothing")),
        };

        Assert.All(sent, one => Assert.True(Holds(one.Schema, one.Body), $"{one.Schema}: {one.Body}"));
        Assert.False(Holds("ShotAnswer", "{}"));
    }

    private async Task<string> TextAsync(string path)
    {
        using var answer = await _host.Client.GetAsync(path, TestContext.Current.CancellationToken);
        return await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
    }

    private bool Holds(string schema, string body) => JsonSchema.FromText(_document.GetProperty("components").GetProperty("schemas").GetProperty(schema).GetRawText())
        .Evaluate(JsonDocument.Parse(body).RootElement).IsValid;
}
