using System.Net;
using System.Text.Json;
using AimTrainer.Sessions;
using Json.Schema;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Web.Tests;

public sealed class FigureApiTests : IAsyncLifetime
{
    private TestHost _host = null!;
    private string _session = "";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _host = await TestHost.StartAsync();
        _session = await _host.StartSessionAsync();
        double[] boards = [10.5, 11, 9.5, 10.2];
        for (var i = 0; i < boards.Length; i++)
        {
            await _host.ShotAsync($"s-{i}", boards[i]);
        }
    }

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task SessionFigures_UnderWay_GrowWithEachShot()
    {
        var before = await _host.GetAsync($"/api/sessions/{_session}/figures");
        await _host.ShotAsync("s-4", 13);
        await _host.Client.PostAsync("/api/stations/1/actions", TestHost.Json("""{"kind":"void","number":1,"reason":"slipped"}"""), Cancel);
        var after = await _host.GetAsync($"/api/sessions/{_session}/figures");

        Assert.Equal((4, 4), (before.GetProperty("accuracy").GetProperty("shots").GetInt32(), after.GetProperty("accuracy").GetProperty("shots").GetInt32()));

        // By hand: misses 0.5, 1, -0.5, 0.2; then without the first and with 3.
        Assert.Equal(0.3, Bias(before), 1e-9);
        Assert.Equal(0.925, Bias(after), 1e-9);
        Assert.Equal([2, 3, 4, 5], after.GetProperty("lines")[0].GetProperty("splits").EnumerateArray().Select(split => split.GetProperty("number").GetInt32()));

        static double Bias(JsonElement figures) =>
            figures.GetProperty("accuracy").GetProperty("perTarget")[0].GetProperty("constantErrorBoards").GetProperty("value").GetDouble();
    }

    [Theory]
    [InlineData("figures", "BowlerFigures")]
    [InlineData("figures?by=ten", "BowlerFigures")]
    [InlineData("trend", "BowlerTrend")]
    [InlineData("trend?starts=2026-09-01&weeks=8&sessionsAWeek=2&goalSpreadBoards=1.2", "BowlerTrend")]
    [InlineData("report.json?from=2020-01-01", "Report")]
    public async Task Document_OfABowler_IsAsItsSchemaSays(string call, string schema)
    {
        var document = await _host.GetAsync($"/api/bowlers/ann/{call}");

        Assert.Equal("Ann", document.GetProperty("bowler").GetString());
        var schemas = (await _host.GetAsync("/openapi/v1.json")).GetProperty("components").GetProperty("schemas");
        Assert.Empty(Mistakes(schemas.GetProperty(schema), document));
        Assert.False(JsonSchema.FromText(schemas.GetProperty(schema).GetRawText()).Evaluate(JsonDocument.Parse("{}").RootElement).IsValid);
    }

    [Fact]
    public async Task SessionFigures_AnySession_AreAsTheirSchemaSays()
    {
        var schemas = (await _host.GetAsync("/openapi/v1.json")).GetProperty("components").GetProperty("schemas");
        Assert.Empty(Mistakes(schemas.GetProperty("SessionFigures"), await _host.GetAsync($"/api/sessions/{_session}/figures")));
    }

    [Theory]
    [InlineData("html", "text/html; charset=utf-8", "<!DOCTYPE html>")]
    [InlineData("pdf", "application/pdf", "%PDF")]
    [InlineData("png", "image/png", "\u0089PNG")]
    [InlineData("csv", "text/csv; charset=utf-8", "section,item")]
    [InlineData("json", "application/json", "{")]
    public async Task Report_InEveryFormat_IsAFileToKeep(string ending, string type, string begins)
    {
        var answer = await _host.Client.GetAsync($"/api/bowlers/Ann/report.{ending}", Cancel);

        Assert.Equal((type, $"report-Ann.{ending}"), (answer.Content.Headers.ContentType?.ToString(), answer.Content.Headers.ContentDisposition?.FileName));
        Assert.StartsWith(begins, System.Text.Encoding.Latin1.GetString(await answer.Content.ReadAsByteArrayAsync(Cancel)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/api/bowlers/Nobody/trend", 404, "bowler: found \"Nobody\"")]
    [InlineData("/api/bowlers/Nobody/report.pdf", 404, "bowler: found \"Nobody\"")]
    [InlineData("/api/sessions/none/figures", 404, "session: found \"none\"")]
    [InlineData("/api/bowlers/Ann/figures?by=shoe", 400, "by: found \"shoe\"; allowed: drill, block, ball, line, lane-part, speed, ten, session")]
    [InlineData("/api/bowlers/Ann/trend?from=1.9.2026", 400, "from: found \"1.9.2026\"; allowed: a day such as 2026-09-01")]
    [InlineData("/api/bowlers/Ann/report.csv?from=2026-09-02&to=2026-09-01", 400, "from, to: found 2026-09-02 to 2026-09-01")]
    [InlineData("/api/bowlers/Ann/trend?weeks=8", 400, "program: found a part of one")]
    [InlineData("/api/bowlers/Ann/trend?starts=2026-09-01&weeks=1.5&sessionsAWeek=2", 400, "weeks: found \"1.5\"; allowed: a whole number from 1 to 104")]
    [InlineData("/api/bowlers/Ann/trend?starts=2026-09-01&weeks=8&sessionsAWeek=2&goalSpreadBoards=0", 400, "goalSpreadBoards: found \"0\"; allowed: a number from 0.1 to 10")]
    public async Task Call_OfWhatIsNotThere_SaysWhatIsAllowed(string path, int status, string detail) =>
        Assert.Contains(detail, await TestHost.RefusedAsync((HttpStatusCode)status, await _host.Client.GetAsync(path, Cancel)), StringComparison.Ordinal);

    [Fact]
    public async Task Figures_ByBlock_AreThoseOfTheBlock()
    {
        var document = await _host.GetAsync("/api/bowlers/Ann/figures?by=block");

        var group = Assert.Single(document.GetProperty("accuracy").GetProperty("groups").EnumerateArray());
        Assert.Equal(("block", 4), (group.GetProperty("by").GetString(), group.GetProperty("shots").GetInt32()));
        Assert.Equal("at the arrows", group.GetProperty("perTarget")[0].GetProperty("name").GetString());
        Assert.Equal(0.3, group.GetProperty("perTarget")[0].GetProperty("constantErrorBoards").GetProperty("value").GetDouble(), 1e-9);
    }

    [Fact]
    public async Task FindLanes_OfSessions_IsTheLaneOfEachAndNothingOfOthers()
    {
        var lanes = await _host.Services.GetRequiredService<IPracticeRecord>().FindLanesAsync([_session, "none"], Cancel);

        var stored = await _host.Services.GetRequiredService<ISessionStore>().FindAsync(_session, Cancel);
        Assert.Equal(stored!.Setup.Lane, Assert.Single(lanes).Value);
    }

    [Theory]
    [InlineData("/bowlers/Ann", "What the record says")]
    [InlineData("/bowlers/Ann?by=ball", "Accuracy by ball")]
    [InlineData("/bowlers/Nobody", "The record knows no bowler of this name")]
    [InlineData("/bowlers/Ann?from=soon", "found &quot;soon&quot;; allowed: a day such as 2026-09-01")]
    public async Task Page_OfABowler_SaysWhatIsKnown(string path, string words) =>
        Assert.Contains(words, await _host.Client.GetStringAsync(path, Cancel), StringComparison.Ordinal);

    [Fact]
    public async Task Page_OfABowlerWithASlash_IsFound()
    {
        await _host.Client.PostAsync("/api/stations/2/sessions", TestHost.Json("""{"bowler":"A/B <i>","drill":"ten-shot-spread"}"""), Cancel);

        Assert.Contains("A/B &lt;i&gt;</h1>", await _host.Client.GetStringAsync("/bowlers/A%2FB%20%3Ci%3E", Cancel), StringComparison.Ordinal);
        Assert.Equal("A/B <i>", (await _host.GetAsync("/api/bowlers/A%2FB%20%3Ci%3E/trend")).GetProperty("bowler").GetString());
    }

    private static List<string> Mistakes(JsonElement schema, JsonElement document)
    {
        var found = JsonSchema.FromText(schema.GetRawText()).Evaluate(document, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return found.IsValid ? [] : [.. found.Details!.Where(detail => detail.Errors is not null).Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}")];
    }

    [Fact]
    public async Task Figures_PassphraseSet_AreTheCoachsAlone()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);

        foreach (var call in (string[])["/api/bowlers/Ann/figures", "/api/bowlers/Ann/trend", "/api/bowlers/Ann/report.json", "/api/sessions/x/figures"])
        {
            await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await host.Client.GetAsync(call, Cancel));
        }
    }
}
