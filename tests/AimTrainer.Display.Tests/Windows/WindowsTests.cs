using AimTrainer.Calibration;

namespace AimTrainer.Display.Tests;

/// <summary>Real windows on an X server without a screen (Xvfb).</summary>
[Collection(nameof(WindowsTests))]
public sealed class WindowsTests
{
    private static readonly WindowWish _windowed = new() { Title = "Test", WindowedSize = new PictureSize(640, 400) };
    private static readonly WindowWish _covering = new() { Title = "Test", Covers = new MonitorKey("screen", 1), HidesPointer = true };

    [Fact]
    public async Task Open_Covering_FillsTheMonitorAndIsSeen()
    {
        using var screen = new VirtualScreen();
        var content = new TestContent();
        await using var running = new RunningLoop((_covering, content));
        await running.Loop;

        await content.FrameOfAsync(1280, 720);
        await SeenAsync(screen, running, content, 0x3366CC);

        Assert.Equal("Test: on monitor 1 (screen, 1280x720)", await running.SaidAsync());
        Assert.All([(0, 0), (1279, 0), (0, 719), (1279, 719), (640, 360)], at => Assert.Equal(0x3366CC, screen.ColourAt(at.Item1, at.Item2)));
        Assert.Equal(new PictureSize(1280, 720), Assert.Single(running.Monitors).Mode);
    }

    [Fact]
    public async Task Run_KeysArePressed_ReachTheWindowAndEscapeClosesIt()
    {
        using var screen = new VirtualScreen();
        var content = new TestContent();
        await using var running = new RunningLoop((_covering with { TakesKeys = true }, content));
        await content.FrameOfAsync(1280, 720);
        await SeenAsync(screen, running, content, 0x224466);
        using var hands = new VirtualKeyboard(screen);

        hands.Press("Right");
        Assert.Equal(new KeyPress(ConsoleKey.RightArrow, Shift: false, Repeats: false), await content.PressAsync());
        hands.Press("Shift_L", "Up");
        KeyPress press;
        do
        {
            press = await content.PressAsync();
        }
        while (press.Key == ConsoleKey.None);

        Assert.Equal(new KeyPress(ConsoleKey.UpArrow, Shift: true, Repeats: false), press);
        hands.Press("s");
        Assert.Equal(new KeyPress(ConsoleKey.S, Shift: false, Repeats: false), await content.PressAsync());
        hands.Press("Escape");
        await running.Ended;
        Assert.True(content.IsDisposed);
    }

    [Fact]
    public async Task Run_ModeOfItsMonitorChanges_FollowsIt()
    {
        using var screen = new VirtualScreen();
        var content = new TestContent();
        await using var running = new RunningLoop((_covering, content));
        await content.FrameOfAsync(1280, 720);

        await screen.RandrAsync("--newmode", "small", "40", "800", "824", "896", "1024", "600", "601", "604", "625");
        await screen.RandrAsync("--addmode", "screen", "small");
        await screen.RandrAsync("--output", "screen", "--mode", "small");

        await content.FrameOfAsync(800, 600);
        Assert.Equal(new PictureSize(800, 600), content.Place!.Size);
    }

    [Fact]
    public async Task Run_ItsMonitorGoesAndComesBack_SaysSoAndReturns()
    {
        using var screen = new VirtualScreen();
        var content = new TestContent();
        await using var running = new RunningLoop((_covering, content));
        await content.FrameOfAsync(1280, 720);
        await running.SaidAsync();

        await screen.RandrAsync("--output", "screen", "--off");
        var away = await running.SaidAsync();
        await screen.RandrAsync("--output", "screen", "--auto");
        var back = await running.SaidAsync();
        await SeenAsync(screen, running, content, 0xAA5500);

        Assert.Equal("Test: monitor screen is away and no other is there; it is shown again as soon as one is", away);
        Assert.Equal("Test: on monitor 1 (screen, 1280x720)", back);
        Assert.True(content.Place!.Borderless);
    }

    [Fact]
    public async Task Open_NoMonitorAtAll_WaitsAndShowsOnceThereIsOne()
    {
        using var screen = new VirtualScreen();
        await screen.RandrAsync("--output", "screen", "--off");
        var content = new TestContent();
        await using var running = new RunningLoop((_windowed, content));
        await running.Loop;

        Assert.Equal("Test: no monitor is connected; it is shown as soon as one is", await running.SaidAsync());
        Assert.Empty(running.Monitors);
        Assert.Equal(new PictureSize(640, 400), await content.FrameAsync());
    }

    [Fact]
    public async Task Run_NothingNew_DrawsNothing()
    {
        using var screen = new VirtualScreen();
        var content = new TestContent();
        await using var running = new RunningLoop((_windowed, content));
        var loop = await running.Loop;
        await content.FrameAsync();
        await SeenAsync(screen, running, content, 0x112233, 640, 360);
        var before = loop.Statistics.Frames;

        // Woken without news it looks, and draws nothing; the last wake-up has news, so the earlier ones are over when it is seen.
        for (var i = 0; i < 50; i++)
        {
            loop.Wake();
        }

        content.Colour = 0x445566;
        content.Want();
        loop.Wake();
        await content.FrameAsync();

        Assert.InRange(loop.Statistics.Frames - before, 0, 1);
        Assert.NotEmpty(loop.Statistics.NewsToSubmitted());
    }

    [Fact]
    public async Task Run_SteadyState_AllocatesNothingAFrame()
    {
        using var screen = new VirtualScreen();
        var finished = new TaskCompletionSource();
        DisplayLoop? loop = null;
        var content = new TestContent { Counted = (200, 1200) };
        var other = new TestContent { Counted = (200, 1200) };
        await using var running = new RunningLoop((_windowed, content), (_windowed, other));
        loop = await running.Loop;

        while (content.AllocatedAfter == 0 || other.AllocatedAfter == 0)
        {
            TestContext.Current.CancellationToken.ThrowIfCancellationRequested();
            content.Want();
            other.Want();
            loop.Wake();
            await Task.Yield();
        }

        Assert.Equal(0, content.AllocatedAfter - content.AllocatedBefore);
        Assert.Equal(0, other.AllocatedAfter - other.AllocatedBefore);
    }

    [Fact]
    public async Task Open_PainterFailsToStart_IsAProblemInWords()
    {
        using var screen = new VirtualScreen();
        var content = new TestContent { FailsToStart = true };
        await using var running = new RunningLoop((_windowed, content));
        await running.Ended;

        Assert.Equal("no window: its drawing could not be started (the shader does not compile)", Assert.Single(running.Problems));
        Assert.True(content.IsDisposed);
    }

    [Fact]
    public async Task Run_PainterFails_ClosesThatWindowOnly()
    {
        using var screen = new VirtualScreen();
        var (failing, fine) = (new TestContent(), new TestContent());
        await using var running = new RunningLoop((_windowed with { Title = "Failing" }, failing), (_windowed with { Title = "Fine" }, fine));
        var loop = await running.Loop;
        await failing.FrameAsync();
        await fine.FrameAsync();
        await running.SaidAsync();
        await running.SaidAsync();

        failing.FailsToPaint = true;
        failing.Want();
        loop.Wake();
        var said = await running.SaidAsync();
        do
        {
            fine.Want();
            loop.Wake();
            await fine.FrameAsync();
        }
        while (loop.Windows > 1);

        Assert.Equal("Failing: closed, because drawing failed (the driver is gone)", said);
        Assert.True(failing.IsDisposed);
    }

    [Fact]
    public async Task Open_ServerWithoutGl_IsAProblemInWords()
    {
        using var screen = new VirtualScreen("-extension", "GLX");
        var content = new TestContent();
        await using var running = new RunningLoop((_windowed, content));
        await running.Ended;

        var problem = Assert.Single(running.Problems);
        Assert.StartsWith("no window: OpenGL 3.3 could not be started here (GLX: ", problem, StringComparison.Ordinal);
        Assert.Contains("install the graphics driver", problem, StringComparison.Ordinal);
        Assert.True(content.IsDisposed);
    }

    [Fact]
    public async Task Dispose_RunningLoop_ClosesItsWindows()
    {
        using var screen = new VirtualScreen();
        var content = new TestContent();
        await using (var running = new RunningLoop((_windowed, content)))
        {
            await content.FrameAsync();
        }

        Assert.True(content.IsDisposed);
    }

    [Fact]
    public void Start_NoLibrary_SaysHowToGetIt()
    {
        var start = WindowSystem.Start(_ => 0);

        Assert.Null(start.System);
        Assert.Equal("no window: libglfw3 is not installed (apt install libglfw3)", start.Problem);
    }

    [Fact]
    public void Start_LibraryWithoutItsFunctions_SaysItIsTooOld()
    {
        var start = WindowSystem.Start(_ => System.Runtime.InteropServices.NativeLibrary.Load("libc.so.6"));

        Assert.Equal("no window: libglfw3 is older than version 3.3 (apt install libglfw3)", start.Problem);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(":4711")]
    public void Start_NoDisplay_SaysWhatToDo(string? display)
    {
        VirtualScreen.SetNative("DISPLAY", display);
        try
        {
            var start = WindowSystem.Start();

            Assert.Null(start.System);
            Assert.StartsWith("no window: there is no display here (X11: ", start.Problem, StringComparison.Ordinal);
            Assert.EndsWith("); start it from a desktop session, or set DISPLAY to one (DISPLAY=:0)", start.Problem, StringComparison.Ordinal);
        }
        finally
        {
            VirtualScreen.SetNative("DISPLAY", null);
        }
    }

    /// <summary>Draws the colour until the middle of the screen has it: what a frame drew is on the screen a moment after.</summary>
    private static async Task SeenAsync(VirtualScreen screen, RunningLoop running, TestContent content, int colour, int x = 640, int y = 360)
    {
        var loop = await running.Loop;
        content.Colour = colour;
        do
        {
            content.Want();
            loop.Wake();
            await content.FrameAsync();
        }
        while (screen.ColourAt(x, y) != colour);
    }
}
