using System.Net;
using AimTrainer.Display;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Web.Tests;

/// <summary>A display elsewhere shows what the host has, whatever happens to the line between them.</summary>
public sealed class DisplayFollowerTests : IAsyncLifetime
{
    private TestHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await TestHost.StartAsync(8);

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task Follow_AsShotsCome_TheVeryScenesOfTheHost()
    {
        await using var display = await LookAsync(7, ScreenKind.Overhead);
        await display.UntilAsync(one => one.Dark.Reason is null);
        Assert.Equal(LookingDisplay.OverheadOf(Station(7).Snapshot), display.Overhead());

        await _host.StartSessionAsync(7);
        for (var shot = 1; shot <= 12; shot++)
        {
            await _host.ShotAsync($"s{shot}", 9.5 + (shot * 0.17), 7);
            var wanted = Station(7).Snapshot;
            await display.UntilAsync(one => one.Slot.Newest.Snapshot.Version == wanted.Version);

            // The aim is the one that the next shot is graded against, to the last digit.
            Assert.Equal(wanted.Shown, display.Slot.Newest.Snapshot.Shown);
            Assert.Equal(LookingDisplay.OverheadOf(wanted), display.Overhead());
            Assert.Equal(LookingDisplay.ProjectorOf(wanted), display.Projector());
        }

        Assert.Equal(SessionPhaseOf(Station(7)), display.Slot.Newest.Snapshot.Phase.ToString());
    }

    [Fact]
    public async Task Follow_HostRestarts_KeepsThePictureSaysSinceWhenAndTakesUpOnlyWhatIsMissing()
    {
        await _host.StartSessionAsync(7);
        await _host.ShotAsync("a", 10, 7);
        await using var display = await LookAsync(7, ScreenKind.Overhead);
        await display.UntilAsync(one => one.Slot.Newest.Snapshot.NextNumber == 2);
        var before = display.Overhead();
        var seen = display.Seen.Count;

        await _host.RestartAsync();
        await _host.ShotAsync("b", 11, 7);
        await display.UntilAsync(one => one.Slot.Newest is { Notice: null, Snapshot.NextNumber: 3 });

        // Whatever could have been drawn meanwhile is the old picture (with or without the notice) or the new one; never an empty lane.
        lock (display.Seen)
        {
            Assert.All(display.Seen.Skip(seen), state => Assert.True(
                state.Dark is null && state.News.Snapshot.NextNumber is 2 or 3 && (state.News.Snapshot.NextNumber == 3 || LookingDisplay.OverheadOf(state.News.Snapshot) == before)));
            Assert.All(display.Seen.Skip(seen).Where(state => state.News.Notice is not null), state => Assert.NotNull(state.News.AwaySince));
        }

        Assert.Equal(LookingDisplay.OverheadOf(Station(7).Snapshot), display.Overhead());
    }

    [Fact]
    public async Task Follow_NobodyAnswers_WaitsInTheDarkAndGoesOnWhenTheHostIsThere()
    {
        using var taken = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var port = ((IPEndPoint)taken.LocalEndpoint).Port;
        taken.Stop();
        await using var display = new LookingDisplay(new Uri($"http://127.0.0.1:{port}"), 1, ScreenKind.Projector, null);

        await display.UntilAsync(one => one.Slot.Newest.Notice is not null);

        // Whether projection is stopped there is not known: so there is no light.
        Assert.IsType<DarkReason.Waiting>(display.Dark.Reason);
        Assert.Null(display.Dark.Reason.Picture(onLane: true).Title);
        Assert.Contains(display.Said, text => text.Contains("trying again", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Follow_TokenRevoked_GoesDarkWithALineThatSaysWhy()
    {
        var (id, token) = await TokenAsync(7, "overhead");
        await using var display = new LookingDisplay(_host.Address, 7, ScreenKind.Overhead, token);
        await display.UntilAsync(one => one.Dark.Reason is null);

        Assert.Equal(HttpStatusCode.OK, (await _host.Client.DeleteAsync($"/api/access/displays/{id}", TestContext.Current.CancellationToken)).StatusCode);
        await display.UntilAsync(one => one.Dark.Reason is DarkReason.NotAllowed);

        var scene = SceneText.Write(display.Dark.Reason!.Picture(onLane: false).SceneOf(16.0 / 9, ThemeLibrary.Default));
        Assert.Contains("revoked", scene, StringComparison.Ordinal);
        Assert.DoesNotContain(display.Said, text => text.Contains(token, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(8, ScreenKind.Overhead, "The token is for another station")]
    [InlineData(7, ScreenKind.Projector, "The token is for another station or another kind of display")]
    public async Task Follow_TokenOfAnotherDisplay_ShowsNothing(int station, ScreenKind kind, string why)
    {
        var (_, token) = await TokenAsync(7, "overhead");
        await _host.StartSessionAsync(station);
        await using var display = new LookingDisplay(_host.Address, station, kind, token);

        await display.UntilAsync(one => one.Dark.Reason is DarkReason.NotAllowed);

        Assert.StartsWith(why, ((DarkReason.NotAllowed)display.Dark.Reason!).Why, StringComparison.Ordinal);
        Assert.Null(display.Slot.Newest.Snapshot.Phase);
    }

    [Fact]
    public async Task Follow_NoSuchStation_IsSaid()
    {
        await using var display = new LookingDisplay(_host.Address, 9, ScreenKind.Overhead, null);

        await display.UntilAsync(one => one.Dark.Reason is DarkReason.Differs);

        Assert.Contains(display.Said, text => text.Contains("station: found 9; allowed: 1 to 8", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Stream_OtherProtocol_IsRefusedInWords()
    {
        var answer = await _host.Client.GetAsync("/api/stations/7/displays/overhead?protocol=3", TestContext.Current.CancellationToken);

        Assert.Contains("display is newer than this host", await TestHost.RefusedAsync(HttpStatusCode.Conflict, answer), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Follow_OlderHostWithoutDisplays_IsSaid()
    {
        // An address of this host that older ones answer the same way: there is no such call.
        await using var display = new LookingDisplay(new Uri(_host.Address, "/nothing/"), 1, ScreenKind.Overhead, null);

        await display.UntilAsync(one => one.Dark.Reason is DarkReason.Differs);

        Assert.Contains("too old for displays elsewhere", ((DarkReason.Differs)display.Dark.Reason!).Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("event: hello\ndata: {\"protocol\":3,\"version\":\"9.9\",\"station\":1,\"kind\":\"overhead\"}\n\n", "the host (9.9) is newer than this display; use the same version of aimtrainer for both")]
    [InlineData("event: hello\ndata: {\"protocol\":1,\"version\":\"0.0\",\"station\":1,\"kind\":\"overhead\"}\n\n", "the host (0.0) is older than this display; use the same version of aimtrainer for both")]
    [InlineData("event: hello\ndata: {\"protocols\":[1]}\n\n", "what the host sends is not what this version reads; use the same version of aimtrainer for both")]
    public async Task Follow_HostOfAnotherVersion_IsDarkAndSaysSo(string stream, string said)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore();
        await using var other = builder.Build();
        other.Urls.Add("http://127.0.0.1:0");
        other.Run(async context =>
        {
            context.Response.ContentType = "text/event-stream";
            await context.Response.WriteAsync(stream);
        });
        await other.StartAsync(TestContext.Current.CancellationToken);
        await using var display = new LookingDisplay(new Uri(other.Urls.First()), 1, ScreenKind.Overhead, null);

        await display.UntilAsync(one => one.Dark.Reason is DarkReason.Differs);

        Assert.Equal(said, ((DarkReason.Differs)display.Dark.Reason!).Why);
    }

    [Fact]
    public async Task Follow_FeedbackWithheld_TheScenesHoldItBackHereToo()
    {
        // The drill tells the bowler after ten shots; what the coach sees is not what the screen shows.
        await _host.StartSessionAsync(7);
        await using var display = await LookAsync(7, ScreenKind.Overhead);
        await _host.ShotAsync("a", 12.34, 7);
        await display.UntilAsync(one => one.Slot.Newest.Snapshot.NextNumber == 2);

        Assert.Equal(12.34m, Assert.Single(display.Slot.Newest.Snapshot.LastShots.AsEnumerable()).Shot.Crossings[0].Board.ExactBoards);
        Assert.DoesNotContain("12.3", display.Overhead(), StringComparison.Ordinal);
        Assert.DoesNotContain("12.3", display.Projector(), StringComparison.Ordinal);
    }

    private async Task<LookingDisplay> LookAsync(int station, ScreenKind kind) =>
        new(_host.Address, station, kind, (await TokenAsync(station, kind == ScreenKind.Overhead ? "overhead" : "projector")).Token);

    private async Task<(string Id, string Token)> TokenAsync(int station, string kind)
    {
        var made = await TestHost.BodyAsync(await _host.Client.PostAsync(
            "/api/access/displays", TestHost.Json($$"""{"name":"by the lane","station":{{station}},"kind":"{{kind}}"}"""), TestContext.Current.CancellationToken));
        return (made.GetProperty("display").GetProperty("id").GetString()!, made.GetProperty("token").GetString()!);
    }

    private Station Station(int number) => _host.Services.GetRequiredService<IReadOnlyList<Station>>()[number - 1];

    private static string SessionPhaseOf(Station station) => station.Snapshot.Phase.ToString()!;
}
