using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using Json.Schema;

namespace AimTrainer.Web.Tests;

public sealed class CompareApiTests : IAsyncLifetime
{
    private TestHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await TestHost.StartAsync();

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task Compare_SessionUnderWay_IsInItAndAsTheSchemaSays()
    {
        var session = await ThrowAsync(8);
        var text = await _host.Client.GetStringAsync("/api/compare?bowler=ann&reference=red", TestContext.Current.CancellationToken);
        var report = JsonDocument.Parse(text).RootElement;

        Assert.Equal(("Ann", 8), (report.GetProperty("bowler").GetString(), report.GetProperty("throws").GetArrayLength()));
        Assert.False(Assert.Single(report.GetProperty("sessions").EnumerateArray()).GetProperty("ended").GetBoolean());
        var line = Assert.Single(report.GetProperty("comparison").GetProperty("lines").EnumerateArray());
        Assert.Equal(("Blue", "board 10 at 15 ft", 4), (line.GetProperty("ball").GetString(), line.GetProperty("line").GetString(), line.GetProperty("ballThrows").GetInt32()));
        var schemas = (await _host.GetAsync("/openapi/v1.json")).GetProperty("components").GetProperty("schemas");
        Assert.True(JsonSchema.FromText(schemas.GetProperty("Comparison").GetRawText()).Evaluate(report).IsValid, text);

        var bySession = await _host.GetAsync($"/api/compare?session={session}&ball=Blue&ball=red");
        Assert.Equal("Blue", bySession.GetProperty("comparison").GetProperty("reference").GetString());
        Assert.Equal(8, bySession.GetProperty("throws").GetArrayLength());
    }

    [Theory]
    [InlineData("html", "text/html", "<!DOCTYPE html>")]
    [InlineData("pdf", "application/pdf", "%PDF")]
    [InlineData("png", "image/png", "\u0089PNG")]
    [InlineData("csv", "text/csv", "section,item")]
    [InlineData("json", "application/json", "{")]
    public async Task Export_EveryFormat_IsTheFile(string ending, string type, string begins)
    {
        await ThrowAsync(4);
        var answer = await _host.Client.GetAsync($"/api/compare/balls.{ending}?bowler=Ann", TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.OK, type), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        Assert.StartsWith(begins, Encoding.Latin1.GetString(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)), StringComparison.Ordinal);
        Assert.Equal($"balls.{ending}", answer.Content.Headers.ContentDisposition?.FileName);
    }

    [Theory]
    [InlineData("", HttpStatusCode.BadRequest, "bowler: found nothing")]
    [InlineData("?bowler=Nobody", HttpStatusCode.NotFound, "Nobody: no session of this bowler is stored here")]
    [InlineData("?session=x", HttpStatusCode.NotFound, "session: found \"x\"")]
    [InlineData("?bowler=Ann&from=yesterday", HttpStatusCode.BadRequest, "from: found \"yesterday\"")]
    [InlineData("?bowler=Ann&from=2026-09-02&to=2026-09-01", HttpStatusCode.BadRequest, "the first day must not lie after the last")]
    [InlineData("?bowler=Ann&margin=0", HttpStatusCode.BadRequest, "margin: found 0; allowed: 0.05 to 10")]
    [InlineData("?bowler=Ann&margin=NaN", HttpStatusCode.BadRequest, "margin: found NaN")]
    [InlineData("?bowler=Ann&margin=x", HttpStatusCode.BadRequest, "")]
    public async Task Compare_WhatCannotBeTaken_IsRefusedInWords(string query, HttpStatusCode status, string words)
    {
        var answer = await _host.Client.GetAsync($"/api/compare{query}", TestContext.Current.CancellationToken);
        var detail = await TestHost.RefusedAsync(status, answer);
        Assert.Contains(words, detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_WithAndWithoutBowler_IsServed()
    {
        await ThrowAsync(2);
        Assert.Contains("Whose balls?", await TextAsync("/compare"), StringComparison.Ordinal);
        Assert.Contains("There is no bowler <strong>Zoe</strong>", await TextAsync("/compare?bowler=Zoe"), StringComparison.Ordinal);
        var page = await TextAsync("/compare?bowler=Ann");
        Assert.Contains("2 throws, 2 in the comparison; 0 left out of all, 0 of a measure.", page, StringComparison.Ordinal);
        Assert.Contains("4 more good throws of Blue and 4 more good throws of red until anything can be said.", page, StringComparison.Ordinal);
        Assert.Contains("from: found", await TextAsync("/compare?bowler=Ann&from=x"), StringComparison.Ordinal);
    }

    private Task<string> TextAsync(string path) => _host.Client.GetStringAsync(path, TestContext.Current.CancellationToken);

    /// <summary>Invented shots, two balls in turn.</summary>
    private async Task<string> ThrowAsync(int shots)
    {
        var session = await _host.StartSessionAsync();
        for (var i = 0; i < shots; i++)
        {
            var body = string.Create(CultureInfo.InvariantCulture,
                $$"""{"id":"s{{i}}","ball":"{{(i % 2 == 0 ? "red" : "Blue")}}","arrowsBoard":{{10 + (0.1 * (i % 3))}},"entryBoard":{{17 + (i % 2 * 2) + (0.1 * (i % 4))}}}""");
            var answer = await _host.Client.PostAsync("/api/stations/1/shots", TestHost.Json(body), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        return session;
    }
}
