using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Web.Tests;

/// <summary>Windows on other machines that show no session (a calibration, the check picture) obey the emergency stop of their host too.</summary>
public sealed class HostStopTests : IAsyncLifetime
{
    private readonly ConcurrentQueue<string> _said = new();
    private readonly ConcurrentQueue<DarkReason?> _seen = new();
    private readonly Darkness _dark;
    private TestHost _host = null!;

    public HostStopTests() => _dark = new Darkness(() => _seen.Enqueue(_dark!.Reason));

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _host = await TestHost.StartAsync();

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task Begin_HostStopsAndReleases_IsDarkWhileItHolds()
    {
        await using var stop = Begin(_host.Address);
        Assert.IsType<DarkReason.Waiting>(_dark.Reason);
        Assert.Null(await stop.First);
        Assert.Null(_dark.Reason);

        await PostAsync("stop");
        await UntilAsync(() => _dark.Reason is DarkReason.Stopped);
        Assert.Null(_dark.Reason!.Picture(onLane: true).Title);
        await PostAsync("release");
        await UntilAsync(() => _dark.Reason is null);
    }

    [Fact]
    public async Task Begin_StoppedAlready_NotOneFrameIsLit()
    {
        await PostAsync("stop");
        await using var stop = Begin(_host.Address);

        Assert.Null(await stop.First);

        Assert.IsType<DarkReason.Stopped>(_dark.Reason);
        Assert.All(_seen, Assert.NotNull);
    }

    [Fact]
    public async Task Away_WhileStopped_StaysDarkUntilTheHostIsBackAndItIsReleased()
    {
        await using var stop = Begin(_host.Address);
        await stop.First;
        await PostAsync("stop");
        await UntilAsync(() => _dark.Reason is DarkReason.Stopped);
        _seen.Clear();

        await _host.RestartAsync();
        await PostAsync("stop");
        Assert.All(_seen, Assert.NotNull);
        Assert.IsType<DarkReason.Stopped>(_dark.Reason);
        await PostAsync("release");

        await UntilAsync(() => _dark.Reason is null);
    }

    [Fact]
    public async Task Away_ForGoodWhileStopped_StaysDarkAndSaysSo()
    {
        var host = await TestHost.StartAsync();
        await using var stop = Begin(host.Address);
        await stop.First;
        (await host.Client.PostAsync("/api/projection/stop", null, Cancel)).EnsureSuccessStatusCode();
        await UntilAsync(() => _dark.Reason is DarkReason.Stopped);
        await host.DisposeAsync();

        await UntilAsync(() => !_said.IsEmpty);

        Assert.IsType<DarkReason.Stopped>(_dark.Reason);
        Assert.Contains("the picture stays dark", Assert.Single(_said), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Away_WhileLit_StaysLitAndSaysThatTheStopDoesNotReach()
    {
        var host = await TestHost.StartAsync();
        await using var stop = Begin(host.Address);
        await stop.First;
        await host.DisposeAsync();

        await UntilAsync(() => !_said.IsEmpty);

        Assert.Null(_dark.Reason);
        Assert.Contains("its emergency stop does not reach this window until it answers, and the picture stays lit", Assert.Single(_said), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Begin_OnTheNetworkWithoutAToken_IsToldThatItIsStoppedButNotByWhom()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        await using var stop = Begin(host.Address);
        Assert.Null(await stop.First);
        await coach.PostAsync("/api/projection/stop");
        await UntilAsync(() => _dark.Reason is DarkReason.Stopped);

        using var reader = await EventReader.OpenAsync(host.Client, "/api/projection/live");
        var first = (await reader.NextAsync())!.Value;

        Assert.Equal("projection", first.Name);
        Assert.DoesNotContain("coach", first.Data.GetRawText(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, (await host.Client.GetAsync("/api/projection", Cancel)).StatusCode);
    }

    [Fact]
    public async Task Begin_NoHostThere_IsLitAndSaid()
    {
        await using var stop = Begin(Nobody());

        Assert.NotNull(await stop.First);

        Assert.Null(_dark.Reason);
        Assert.Contains("does not reach this window", Assert.Single(_said), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stops_HostsOfThisMachinesDisplays_AreObeyedUnasked()
    {
        var folder = Directory.CreateTempSubdirectory("aimtrainer-held-").FullName;
        try
        {
            new HeldTokens(folder).Keep(_host.Address, 7, ScreenKind.Projector, "display-x");
            await using var stops = new HostStops(null, folder, TimeProvider.System, _said.Enqueue);
            await stops.BeginAsync(_dark);
            await PostAsync("stop");

            await UntilAsync(() => _dark.Reason is DarkReason.Stopped);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task Stops_TheHostThatIsNamedDoesNotAnswer_IsSaidWithWhatIsAllowed()
    {
        await using var stops = new HostStops(Nobody(), _host.Folder, TimeProvider.System, _said.Enqueue);

        var said = await Assert.ThrowsAsync<UserException>(() => stops.BeginAsync(_dark));

        Assert.Contains("allowed: the address of a console that runs", said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stops_OfThisMachineAndOfTheHost_AreDarkUntilBothAreReleased()
    {
        var folder = Directory.CreateTempSubdirectory("aimtrainer-own-").FullName;
        try
        {
            var own = new StopLook(folder, _dark.Part(), TimeProvider.System);
            await using var stop = Begin(_host.Address);
            await stop.First;
            await PostAsync("stop");
            await UntilAsync(() => _dark.Reason is DarkReason.Stopped);
            new ProjectionStopFile(folder).Write(ProjectionState.StoppedBy("here", DateTimeOffset.UnixEpoch));
            own.Look();
            new ProjectionStopFile(folder).Write(ProjectionState.Free);
            own.Look();
            Assert.IsType<DarkReason.Stopped>(_dark.Reason);

            await PostAsync("release");
            await UntilAsync(() => _dark.Reason is null);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task Stop_ADisplayThatIsRefused_SaysNothingOnTheLaneWhileItHolds()
    {
        await PostAsync("stop");
        await using var display = new LookingDisplay(_host.Address, 1, ScreenKind.Projector, "display-unknown");
        await display.UntilAsync(one => one.Dark.Reason is DarkReason.Stopped);
        lock (display.Seen)
        {
            // Not one frame had a word on it, which is light.
            Assert.All(display.Seen, state => Assert.True(state.Dark is not null && state.Dark.Picture(onLane: true).Title is null));
        }

        await PostAsync("release");
        await display.UntilAsync(one => one.Dark.Reason is DarkReason.NotAllowed);
        await PostAsync("stop");
        await display.UntilAsync(one => one.Dark.Reason is DarkReason.Stopped);
    }

    private HostStop Begin(Uri server) => HostStop.Begin(server, _dark.Part(), TimeProvider.System, _said.Enqueue);

    private async Task PostAsync(string what) => (await _host.Client.PostAsync($"/api/projection/{what}", null, Cancel)).EnsureSuccessStatusCode();

    private static Task UntilAsync(Func<bool> holds) => TestedDoor.UntilAsync(holds);

    /// <summary>An address at which nobody listens.</summary>
    private static Uri Nobody()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        return new Uri($"http://127.0.0.1:{((IPEndPoint)taken.LocalEndpoint).Port}");
    }
}
