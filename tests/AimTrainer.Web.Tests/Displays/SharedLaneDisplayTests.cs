using System.Net;
using AimTrainer.Sessions;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Web.Tests;

/// <summary>A display elsewhere shows whose turn it is on a lane that several bowlers share, and names as they may be shown. Names are invented.</summary>
public sealed class SharedLaneDisplayTests : IAsyncLifetime
{
    private TestHost _host = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private SessionSnapshot Lane => _host.Services.GetRequiredService<IReadOnlyList<Station>>()[0].Snapshot;

    public async ValueTask InitializeAsync() => _host = await TestHost.StartAsync();

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task Follow_BowlersTakeTurns_TheVeryScenesOfTheHost()
    {
        await _host.StartSessionAsync();
        await JoinAsync("Ben Birch");
        await using var display = new LookingDisplay(_host.Address, 1, ScreenKind.Overhead, null);
        for (var shot = 1; shot <= 5; shot++)
        {
            await SameAsync(display);
            await _host.ShotAsync($"s{shot}", 9 + shot);
        }

        await SameAsync(display);
        Assert.Contains("B. B. throws, then A.", display.Overhead(), StringComparison.Ordinal);

        // The turn is moved by hand, and a name is agreed: no shot came, and the picture changes all the same.
        await PostAsync("/api/stations/1/turns", """{"kind":"skip"}""");
        await SameAsync(display);
        Assert.Contains("A. throws, then B. B.", display.Overhead(), StringComparison.Ordinal);
        await PostAsync("/api/people/agreed", """{"bowler":"Ben Birch","shown":"givenName"}""");
        await SameAsync(display);
        Assert.Contains("A. throws, then Ben", display.Overhead(), StringComparison.Ordinal);

        // A display is not told names of the record beyond the session that it shows, nor what another's shot came to.
        Assert.All(display.Slot.Newest.Snapshot.Turns!.Places, place => Assert.Null(place.Bowler));
        Assert.Null(display.Slot.Newest.Snapshot.Turns!.Last!.Held);

        await _host.RestartAsync();
        await _host.ShotAsync("again", 11);
        await SameAsync(display);
    }

    private async Task SameAsync(LookingDisplay display)
    {
        var host = Lane;
        await display.UntilAsync(one => one.Slot.Newest is { Notice: null, Snapshot: var seen } && seen.Setup?.SessionId == host.Setup!.SessionId && seen.Version == host.Version
            && seen.NameOnScreen == host.NameOnScreen && seen.Turns == host.Turns!.ForScreens());
        Assert.Equal(host.Shown, display.Slot.Newest.Snapshot.Shown);
        Assert.Equal(LookingDisplay.OverheadOf(host), display.Overhead());
        Assert.Equal(LookingDisplay.ProjectorOf(host), display.Projector());
    }

    private async Task JoinAsync(string bowler)
    {
        var joined = await _host.Client.PostAsync("/api/stations/1/bowlers", TestHost.Json($$"""{"bowler":"{{bowler}}","drill":"ten-shot-spread"}"""), Cancel);
        Assert.Equal(HttpStatusCode.Created, joined.StatusCode);
        var session = (await TestHost.BodyAsync(joined)).GetProperty("sessionId").GetString();
        await PostAsync($"/api/stations/1/actions?session={session}", """{"kind":"begin"}""");
    }

    private async Task PostAsync(string path, string json)
    {
        var answer = await _host.Client.PostAsync(path, TestHost.Json(json), Cancel);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Cancel));
    }
}
