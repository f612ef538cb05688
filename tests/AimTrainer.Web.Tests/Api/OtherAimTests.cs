using System.Net;
using System.Text.Json;

namespace AimTrainer.Web.Tests;

/// <summary>The target that is drawn is the target that is graded: a shot that comes late says what it was thrown at.</summary>
public sealed class OtherAimTests
{
    [Fact]
    public async Task Shot_AtTheAimThatIsStillDue_IsGraded()
    {
        await using var host = await TestHost.StartAsync();
        await host.StartSessionAsync();
        var key = await KeyAsync(host);

        Assert.Matches("^[0-9a-f]{16}$", key);
        Assert.Equal(HttpStatusCode.OK, (await ShotAsync(host, "a", key)).StatusCode);
        Assert.Equal(key, await KeyAsync(host));
        Assert.Equal(HttpStatusCode.OK, (await ShotAsync(host, "b", key)).StatusCode);
        Assert.Equal(3, (await host.GetAsync("/api/stations/1")).GetProperty("nextNumber").GetInt32());
    }

    [Fact]
    public async Task Shot_AtAnAimThatIsNoLongerDue_IsNotGradedUntilSomebodyDecides()
    {
        await using var host = await TestHost.StartAsync();
        await host.StartSessionAsync();
        var drawn = await KeyAsync(host);
        var name = (await host.GetAsync("/api/stations/1")).GetProperty("aim").GetProperty("targets")[0].GetProperty("name").GetString();
        Assert.Equal(HttpStatusCode.OK, (await ShotAsync(host, "first", drawn)).StatusCode);
        var change = JsonSerializer.Serialize(new { kind = "target", target = name, centreBoard = 12.5 });
        Assert.Equal(HttpStatusCode.OK, (await host.Client.PostAsync("/api/stations/1/actions", TestHost.Json(change), TestContext.Current.CancellationToken)).StatusCode);
        var before = (await host.GetAsync("/api/stations/1")).GetProperty("version").GetInt32();
        Assert.NotEqual(drawn, await KeyAsync(host));

        var late = await ShotAsync(host, "late", drawn);
        var detail = await TestHost.RefusedAsync(HttpStatusCode.Conflict, late);
        Assert.Contains("board 12.5 at 15 ft", detail, StringComparison.Ordinal);
        Assert.Equal("/problems/other-aim", (await TestHost.BodyAsync(late)).GetProperty("type").GetString());
        Assert.Equal(before, (await host.GetAsync("/api/stations/1")).GetProperty("version").GetInt32());

        // One that was taken before its answer was lost is still that one, whatever is due by now.
        Assert.Equal(1, (await TestHost.BodyAsync(await ShotAsync(host, "first", drawn))).GetProperty("number").GetInt32());

        // The coach lets it count for what is due now.
        Assert.Equal(HttpStatusCode.OK, (await ShotAsync(host, "late", null)).StatusCode);
        Assert.Equal(before + 1, (await host.GetAsync("/api/stations/1")).GetProperty("version").GetInt32());
    }

    [Fact]
    public async Task Key_ForTheBowler_IsTheSameAim()
    {
        await using var host = await TestHost.StartAsync();
        await host.StartSessionAsync();
        using var stream = await EventReader.OpenAsync(host.Client, "/api/stations/1/live?view=bowler");

        Assert.Equal(await KeyAsync(host), (await stream.NextAsync())!.Value.Data.GetProperty("aimKey").GetString());
        Assert.Equal(JsonValueKind.Null, (await host.GetAsync("/api/stations/2")).GetProperty("aimKey").ValueKind);
    }

    private static async Task<string> KeyAsync(TestHost host) => (await host.GetAsync("/api/stations/1")).GetProperty("aimKey").GetString()!;

    private static Task<HttpResponseMessage> ShotAsync(TestHost host, string id, string? key) => host.Client.PostAsync(
        $"/api/stations/1/shots{(key is null ? "" : $"?aim={key}")}", TestHost.Json($$"""{"id":"{{id}}","arrowsBoard":10}"""), TestContext.Current.CancellationToken);
}
