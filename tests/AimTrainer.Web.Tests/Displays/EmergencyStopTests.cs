using System.Net;
using System.Text.Json;
using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Web.Tests;

/// <summary>One call hides all projection, everywhere, until it is released.</summary>
public sealed class EmergencyStopTests : IAsyncLifetime
{
    private TestHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await TestHost.StartAsync(3);

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task Stop_AllDisplaysOfAllStations_AreDarkInTheNextFrameAndStaySoThroughARestart()
    {
        await _host.StartSessionAsync(2);
        var displays = new List<LookingDisplay>();
        for (var station = 1; station <= 3; station++)
        {
            displays.Add(new LookingDisplay(_host.Address, station, ScreenKind.Projector, null));
            displays.Add(new LookingDisplay(_host.Address, station, ScreenKind.Overhead, null));
        }

        foreach (var display in displays)
        {
            await display.UntilAsync(one => one.Dark.Reason is null);
        }

        Assert.True((await StopAsync()).GetProperty("stopped").GetBoolean());
        foreach (var display in displays)
        {
            // The first thing that comes after the stop is the stop: no other picture is drawn before it.
            await display.UntilAsync(one => one.Dark.Reason is DarkReason.Stopped);
        }

        await _host.ShotAsync("a", 10, 2);
        await _host.RestartAsync();
        Assert.True((await _host.GetAsync("/api/projection")).GetProperty("stopped").GetBoolean());
        await using (var late = new LookingDisplay(_host.Address, 2, ScreenKind.Projector, null))
        {
            await late.UntilAsync(one => one.Slot.Newest.Snapshot.NextNumber == 2);
            Assert.IsType<DarkReason.Stopped>(late.Dark.Reason);
            Assert.All(late.Seen, state => Assert.NotNull(state.Dark));
        }

        Assert.All(displays, display => Assert.IsType<DarkReason.Stopped>(display.Dark.Reason));
        await ReleaseAsync();
        foreach (var display in displays)
        {
            await display.UntilAsync(one => one.Dark.Reason is null);
            await display.DisposeAsync();
        }

        Assert.Equal(2, displays[2].Slot.Newest.Snapshot.NextNumber);
        Assert.False(File.Exists(Path.Combine(_host.Folder, "projection-stop.json")));
    }

    [Fact]
    public async Task Stop_AFrameOfTheLane_IsBlackToItsLastPixelAndReleasedIsTheSameAsBefore()
    {
        var size = new PictureSize(320, 180);
        await _host.StartSessionAsync();
        await using var display = new LookingDisplay(_host.Address, 1, ScreenKind.Projector, null);
        await display.UntilAsync(one => one.Dark.Reason is null);
        var before = display.Slot.Newest;
        await StopAsync();
        await display.UntilAsync(one => one.Dark.Reason is not null);
        var stopped = display.Dark.Reason;
        await ReleaseAsync();
        await display.UntilAsync(one => one.Dark.Reason is null);
        DrawStopped(size, before, stopped!, display.Slot.Newest);
    }

    /// <summary>On one thread: GL belongs to the one that opened it.</summary>
    private void DrawStopped(PictureSize size, DisplayNews before, DarkReason stopped, DisplayNews after)
    {
        var slot = new NewsSlot(before, () => { });
        var darkness = new Darkness(() => { });
        var maps = new DisplayMaps(_host.Folder, 1, _ => { });
        using var surface = EglSurface.Open(size).Surface;
        Assert.NotNull(surface);
        using var content = new DarkenedContent(new ProjectorContent(slot, maps.For, ThemeLibrary.Default, TimeProvider.System), darkness, onLane: true, ThemeLibrary.Default);
        content.Placed(new WindowPlace(false, 0, 0, size, null, null));
        content.Painter.Start(surface.Gl);
        byte[] Frame()
        {
            Assert.True(content.Refresh(size));
            content.Painter.Paint(size);
            var pixels = new byte[size.Width * size.Height * 4];
            surface.Read(pixels);
            Assert.False(content.Refresh(size));
            return pixels;
        }

        var lit = Frame();
        Assert.False(IsBlack(lit));
        darkness.Set(stopped);
        Assert.True(IsBlack(Frame()));

        // What comes while it is dark is not drawn.
        slot.Put(after);
        Assert.False(content.Refresh(size));
        darkness.Set(null);
        Assert.Equal(lit, Frame());
    }

    [Fact]
    public async Task Stop_OfThisMachinesWindows_IsSeenAtTheNextLook()
    {
        var darkness = new Darkness(() => { });
        var look = new StopLook(_host.Folder, darkness, TimeProvider.System);
        look.Look();
        Assert.Null(darkness.Reason);

        await StopAsync();
        look.Look();
        Assert.IsType<DarkReason.Stopped>(darkness.Reason);

        await ReleaseAsync();
        look.Look();
        Assert.Null(darkness.Reason);
    }

    [Fact]
    public async Task Stop_ByAFileOfAnotherProgram_IsTakenOverAndAudited()
    {
        await using var display = new LookingDisplay(_host.Address, 1, ScreenKind.Overhead, null);
        await display.UntilAsync(one => one.Dark.Reason is null);

        new ProjectionStopFile(_host.Folder).Write(ProjectionState.StoppedBy("the desk", new DateTimeOffset(2026, 3, 2, 18, 0, 0, TimeSpan.Zero)));
        await display.UntilAsync(one => one.Dark.Reason is DarkReason.Stopped);

        Assert.Equal("the desk", (await _host.GetAsync("/api/projection")).GetProperty("by").GetString());
        Assert.Contains("projection stop", await AuditAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public void Stop_FileThatCannotBeRead_CountsAsStopped()
    {
        File.WriteAllText(Path.Combine(_host.Folder, "projection-stop.json"), "{ half");

        Assert.True(new ProjectionStopFile(_host.Folder).Read().Stopped);
    }

    [Fact]
    public async Task Stop_TwiceAndReleasedTwice_KeepsWhoWasFirstAndIsAudited()
    {
        var first = await StopAsync();
        var second = await StopAsync();
        Assert.Equal(first.GetProperty("since").GetString(), second.GetProperty("since").GetString());
        Assert.Equal("coach at this machine", second.GetProperty("by").GetString());
        await ReleaseAsync();
        await ReleaseAsync();

        var audit = await AuditAsync();
        foreach (var words in (string[])["all projection is stopped", "stopped already", "projection is released", "was not stopped"])
        {
            Assert.Contains(words, audit, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Stop_ThatCannotBeKept_HidesAllTheSame()
    {
        // A folder of that name is in the way of the file.
        Directory.CreateDirectory(Path.Combine(_host.Folder, "projection-stop.json"));
        try
        {
            var said = await TestHost.RefusedAsync(HttpStatusCode.ServiceUnavailable, await _host.Client.PostAsync("/api/projection/stop", null, TestContext.Current.CancellationToken));

            Assert.Contains("all projection IS hidden now", said, StringComparison.Ordinal);
            Assert.True((await _host.GetAsync("/api/projection")).GetProperty("stopped").GetBoolean());
        }
        finally
        {
            Directory.Delete(Path.Combine(_host.Folder, "projection-stop.json"));
        }
    }

    [Fact]
    public async Task Stop_OfABowlersPhone_IsRefused()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        using var phone = host.Browser();
        await phone.PairAsync(coach, 1);

        Assert.Equal(HttpStatusCode.Forbidden, (await phone.PostAsync("/api/projection/stop")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.Client.GetAsync("/api/projection", TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await coach.PostAsync("/api/projection/stop")).StatusCode);
    }

    private static bool IsBlack(byte[] pixels) => Enumerable.Range(0, pixels.Length).All(i => i % 4 == 3 || pixels[i] == 0);

    private async Task<JsonElement> StopAsync() => await TestHost.BodyAsync(await _host.Client.PostAsync("/api/projection/stop", null, TestContext.Current.CancellationToken));

    private async Task ReleaseAsync() =>
        Assert.False((await TestHost.BodyAsync(await _host.Client.PostAsync("/api/projection/release", null, TestContext.Current.CancellationToken))).GetProperty("stopped").GetBoolean());

    private async Task<string> AuditAsync()
    {
        using var reader = new StreamReader(new FileStream(Path.Combine(_host.Folder, "audit.jsonl"), FileMode.Open, FileAccess.Read, FileShare.ReadWrite));
        return await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
    }
}
