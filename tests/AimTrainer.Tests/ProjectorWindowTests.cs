using System.Text.Json;
using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Display.Tests;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using SixLabors.ImageSharp.PixelFormats;

namespace AimTrainer.Tests;

/// <summary>Windows that cover a projector, on an X server without a screen (Xvfb). The tests of one class run one after the other: windows want a process for themselves.</summary>
public sealed class ProjectorWindowTests : IDisposable
{
    private static readonly PictureSize _size = new(1280, 720);

    private readonly Workplace _work = new();
    private readonly StringWriter _out = new(), _error = new();
    private readonly UserConsole _console;

    public ProjectorWindowTests() => _console = new UserConsole
    {
        In = TextReader.Null,
        Out = TextWriter.Synchronized(_out),
        Error = TextWriter.Synchronized(_error),
        OpenOut = () => Stream.Null,
        PersonTypes = false,
        PersonReads = false,
    };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        _work.Dispose();
        _out.Dispose();
        _error.Dispose();
    }

    [Fact]
    public async Task Place_ThroughTheDoor_ShowsTheCrosshairSavesTheMapAndClosesTheWindow()
    {
        using var screen = new VirtualScreen();
        var opened = new TaskCompletionSource<ICalibrationDoor>(TaskCreationOptions.RunContinuationsAsynchronously);
        var run = new CalibrationRun(_console, ThemeLibrary.Default, _work.Data) { Opened = opened.SetResult };
        var task = new CalibrationTask(new MapPlace(2, "lane"), LaneProfileReader.Default, null);
        var store = new MapStore(Path.Combine(_work.Data, "maps"), TimeProvider.System);
        var running = Task.Run(() => _console.MainThread.Lend(() => run.PlaceAsync(task, new DisplayWish(DisplayKind.Calibration, "screen", false), store, Cancel)), Cancel);
        await Task.WhenAny(opened.Task, running);
        Assert.True(opened.Task.IsCompleted, running.Exception?.ToString());
        var door = await opened.Task;

        // The arm of the crosshair, to the right of its middle.
        await UntilAsync(screen, 640 + 20, 360, new Rgba32(0xff, 0xd2, 0x5e));
        foreach (var (x, y) in (ReadOnlySpan<(int, int)>)[(1000, 660), (280, 660), (520, 60), (760, 60)])
        {
            MoveTo(door, x, y);
            Do(door, """{"kind":"set"}""");
        }

        Do(door, """{"kind":"accept"}""");
        var state = JsonDocument.Parse(door.StateJson).RootElement;
        Do(door, """{"kind":"accept"}""");

        Assert.Equal(ExitCodes.Ok, await running.WaitAsync(Cancel));
        Assert.Equal("accepted", state.GetProperty("phase").GetString());
        Assert.Equal("station-2.lane.0001.json", state.GetProperty("saved").GetString());
        var saved = Assert.Single(store.Newest().AsEnumerable());
        Assert.Equal(("screen", _size), (saved.Map!.Monitor!.Monitor, saved.Map.Monitor.Size));
        var corner = saved.Map.Map.PixelOf(new LanePoint(default, default));
        Assert.Equal((1000.0, 660.0), (Math.Round(corner.X, 6), Math.Round(corner.Y, 6)));
        Assert.Contains("Nobody walks past the foul line", _out.ToString(), StringComparison.Ordinal);
        Assert.Contains($"Saved: {saved.File}", _out.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Show_ProjectorWithAStoredMap_DrawsByItAndTakesANewOneAtOnce()
    {
        using var screen = new VirtualScreen();
        var snapshot = await SnapshotAsync();
        var (first, second) = (Save(400), Save(700));
        File.Move(Path.Combine(_work.Data, "maps", "station-1.lane.0002.json"), Path.Combine(_work.Folder, "later"));
        var maps = new DisplayMaps(_work.Data, 1, _error.WriteLine);
        var stop = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var running = Task.Run(() => _console.MainThread.Lend(ShowAsync), Cancel);

        var (x, y, colour) = Brightest(snapshot, first);
        await UntilAsync(screen, x, y, colour);
        File.Move(Path.Combine(_work.Folder, "later"), Path.Combine(_work.Data, "maps", "station-1.lane.0002.json"));
        (x, y, colour) = Brightest(snapshot, second);
        await UntilAsync(screen, x, y, colour);
        stop.SetResult();

        Assert.Equal(ExitCodes.Ok, await running.WaitAsync(Cancel));

        async Task<int> ShowAsync()
        {
            await using var windows = await DisplayWindows.OpenAsync(
                _console, 1, [new DisplayWish(DisplayKind.Projector, "screen", false)], DisplayContents.Of(maps, ThemeLibrary.Default, TimeProvider.System), true, _error.WriteLine, _work.Data);
            windows.News.Put(new DisplayNews(snapshot, null));
            await stop.Task;
            return ExitCodes.Ok;
        }
    }

    [Fact]
    public async Task Place_HostElsewhereStopsAllProjection_TheWindowIsDarkAndComesBack()
    {
        using var screen = new VirtualScreen();
        await using var host = await ConsoleHost.OpenAsync(new ConsoleOptions { DataFolder = Path.Combine(_work.Folder, "host"), Urls = "http://127.0.0.1:0" }, Cancel);
        using var coach = new HttpClient { BaseAddress = new Uri(host.Addresses.First()) };
        await using var stops = new HostStops(coach.BaseAddress, _work.Data, TimeProvider.System, _error.WriteLine);
        var opened = new TaskCompletionSource<ICalibrationDoor>(TaskCreationOptions.RunContinuationsAsynchronously);
        var run = new CalibrationRun(_console, ThemeLibrary.Default, _work.Data) { Opening = stops.BeginAsync, Opened = opened.SetResult };
        var task = new CalibrationTask(new MapPlace(2, "lane"), LaneProfileReader.Default, null);
        using var close = new CancellationTokenSource();
        var running = Task.Run(
            () => _console.MainThread.Lend(() => run.PlaceAsync(task, new DisplayWish(DisplayKind.Calibration, "screen", false), new MapStore(_work.Data, TimeProvider.System), close.Token)), Cancel);
        await Task.WhenAny(opened.Task, running);
        var door = await opened.Task;
        var arm = new Rgba32(0xff, 0xd2, 0x5e);
        await UntilAsync(screen, 640 + 20, 360, arm);

        (await coach.PostAsync("/api/projection/stop", null, Cancel)).EnsureSuccessStatusCode();
        await UntilAsync(screen, 640 + 20, 360, new Rgba32(0, 0, 0));

        // What is done meanwhile is not shown, and is not lost.
        Do(door, """{"kind":"nudge","direction":"left","step":"coarse"}""");
        Assert.Equal(0, screen.ColourAt(640 - 12 + 20, 360) & 0xFFFFFF);
        (await coach.PostAsync("/api/projection/release", null, Cancel)).EnsureSuccessStatusCode();
        await UntilAsync(screen, 640 - 12 + 20, 360, arm);
        await close.CancelAsync();

        Assert.Equal(ExitCodes.Ok, await running.WaitAsync(Cancel));
    }

    [Theory]
    [InlineData(DisplayKind.Projector)]
    [InlineData(DisplayKind.Calibration)]
    public async Task Show_StopOfThisMachine_TheWindowIsDarkAndComesBack(object kind)
    {
        using var screen = new VirtualScreen();
        Save(400);
        var snapshot = await SnapshotAsync();
        var maps = new DisplayMaps(_work.Data, 1, _error.WriteLine);
        var stop = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        Func<DisplayWish, NewsSlot, IWindowContent> contents = kind is DisplayKind.Projector ? DisplayContents.Of(maps, ThemeLibrary.Default, TimeProvider.System)
            : (_, _) => new CheckContent(maps.For, LaneProfileReader.Default, ThemeLibrary.Default);
        var running = Task.Run(() => _console.MainThread.Lend(ShowAsync), Cancel);
        using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(10));
        while (!IsLit(screen))
        {
            await timer.WaitForNextTickAsync(Cancel);
        }

        Assert.Equal(0, _work.Run("stop").Code);
        while (IsLit(screen))
        {
            await timer.WaitForNextTickAsync(Cancel);
        }

        Assert.Equal(0, _work.Run("stop", "--release").Code);
        while (!IsLit(screen))
        {
            await timer.WaitForNextTickAsync(Cancel);
        }

        stop.SetResult();
        Assert.Equal(ExitCodes.Ok, await running.WaitAsync(Cancel));

        async Task<int> ShowAsync()
        {
            await using var windows = await DisplayWindows.OpenAsync(_console, 1, [new DisplayWish((DisplayKind)kind, "screen", false)], contents, true, _error.WriteLine, _work.Data);
            windows.News.Put(new DisplayNews(snapshot, null));
            await stop.Task;
            return ExitCodes.Ok;
        }
    }

    [Fact]
    public async Task Look_TargetsThatCannotBeShown_AreSaidOnceWithNumbersAndWhatHelps()
    {
        var snapshot = await SnapshotAsync();
        var said = new List<string>();
        var monitor = new MonitorInfo(1, "screen", 0, 0, _size, 60, 0, 0);
        var covering = new WindowPlace(true, 0, 0, _size, monitor, null);
        var coarse = DisplayMaps.Straight(_size) with { Homography = new Homography(-0.5, 0, 400, 0, -0.9, 700, 0, 0, 1) };
        var near = DisplayMaps.Straight(_size) with { Stretch = new LaneStretch(default, Feet.FromFeet(20), default, default) };

        var flags = new TargetFlags(_ => false, said.Add);
        flags.Look(covering with { Borderless = false }, coarse, snapshot);
        Assert.Empty(said);
        flags.Look(covering, coarse, snapshot);
        flags.Look(covering, coarse, snapshot);
        Assert.Equal(2, said.Count);
        Assert.StartsWith("projector on screen: a target of 3 boards at 15 ft cannot be shown as it is graded: 1.6 pixels wide, needed 3; ", said[0], StringComparison.Ordinal);
        Assert.Contains("What would help: a target of at least ", said[0], StringComparison.Ordinal);

        said.Clear();
        new TargetFlags(_ => true, said.Add).Look(covering, near, snapshot);
        Assert.Empty(said);
        new TargetFlags(_ => false, said.Add).Look(covering, near, snapshot);
        Assert.Contains("at 40 ft lies outside of the stretch", Assert.Single(said), StringComparison.Ordinal);
    }

    private static void Do(ICalibrationDoor door, string action)
    {
        var answer = door.Do(action);
        Assert.True(answer.Understood, answer.Problem);
    }

    private static void MoveTo(ICalibrationDoor door, double x, double y)
    {
        while (true)
        {
            var at = JsonDocument.Parse(door.StateJson).RootElement.GetProperty("crosshair");
            var (dx, dy) = (x - at.GetProperty("x").GetDouble(), y - at.GetProperty("y").GetDouble());
            if (dx == 0 && dy == 0)
            {
                return;
            }

            var (far, direction) = Math.Abs(dx) >= Math.Abs(dy) ? (Math.Abs(dx), dx < 0 ? "left" : "right") : (Math.Abs(dy), dy < 0 ? "up" : "down");
            Do(door, $$"""{"kind":"nudge","direction":"{{direction}}","step":"{{(far >= 12 ? "coarse" : "fine")}}"}""");
        }
    }

    /// <summary>Looks at the screen until a pixel has a colour; never, and the test is ended from outside.</summary>
    private static async Task UntilAsync(VirtualScreen screen, int x, int y, Rgba32 colour)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(10));
        bool Near(int found, byte wanted) => Math.Abs(found - wanted) <= 2;
        while (screen.ColourAt(x, y) is var found && !(Near(found >> 16, colour.R) && Near((found >> 8) & 0xFF, colour.G) && Near(found & 0xFF, colour.B)))
        {
            await timer.WaitForNextTickAsync(Cancel);
        }
    }

    /// <summary>Whether anything is lit, looked at along lines across the lane: a window that is dark has no light at all.</summary>
    private static bool IsLit(VirtualScreen screen)
    {
        for (var y = 20; y < _size.Height; y += 20)
        {
            for (var x = 4; x < _size.Width; x += 8)
            {
                if ((screen.ColourAt(x, y) & 0xFFFFFF) != 0)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private async Task<SessionSnapshot> SnapshotAsync()
    {
        _work.Typed("", "run", "--drill", "two-point-line");
        var slot = new NewsSlot(new DisplayNews(SessionSnapshot.Idle(1), null), () => { });
        await new DisplayRecord(_work.Data, 1, TimeProvider.System, slot).LookAsync(Cancel);
        return slot.Newest.Snapshot;
    }

    /// <summary>The brightest pixel of the target as it must be drawn, drawn without a window.</summary>
    private static (int X, int Y, Rgba32 Colour) Brightest(SessionSnapshot snapshot, ProjectorMap map)
    {
        var opened = EglSurface.Open(_size);
        Assert.True(opened.Worked, opened.Problem);
        using var surface = opened.Surface;
        using var frames = new OffscreenFrames(surface);
        using var image = frames.Draw(ProjectorContent.SceneOf(new DisplayNews(snapshot, null), null, true, ThemeLibrary.Default), map);
        var places = Enumerable.Range(0, _size.Width * _size.Height).Select(i => (X: i % _size.Width, Y: i / _size.Width));
        var (x, y) = places.MaxBy(at => image[at.X, at.Y] is var pixel ? pixel.R + pixel.G + pixel.B : 0);
        return (x, y, image[x, y]);
    }

    private ProjectorMap Save(double right)
    {
        var map = DisplayMaps.Straight(_size) with { Homography = new Homography(-9, 0, right, 0, -0.94, 700, 0, 0, 1) };
        var stored = new MapStore(Path.Combine(_work.Data, "maps"), TimeProvider.System).Save(new SavedMap
        {
            Place = new MapPlace(1, MapPlace.OnlyProjector),
            Monitor = new MonitorMode("screen", _size, Hertz()),
            Map = map,
            LaneWidth = Inches.FromInches(41.5),
            DistortionTerms = 0,
            Marks = [],
        });
        Assert.Equal("", stored.Problem);
        return map;
    }

    /// <summary>What this X server says of its refresh rate, which may be nothing.</summary>
    private static int Hertz()
    {
        var start = WindowSystem.Start();
        using var system = start.System;
        Assert.NotNull(system);
        return system.Monitors.All[0].RefreshHertz;
    }
}
