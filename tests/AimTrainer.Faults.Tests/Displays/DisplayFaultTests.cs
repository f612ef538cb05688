namespace AimTrainer.Faults.Tests;

/// <summary>Whatever happens to a display, the session goes on; whatever happens to the session, the display goes on.</summary>
public sealed class DisplayFaultTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _data;
    private readonly string _drill;
    private readonly GrowingShots _shots;
    private readonly int _shotsInDrill;

    public DisplayFaultTests()
    {
        (_data, _drill) = (_folder.File("data"), _folder.File("drill.json"));
        _shotsInDrill = MixedDrill.Write(_drill, 8);
        _shots = new GrowingShots(_folder.File("shots.csv"), 3);
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Display_SessionOfAnotherProcess_IsShownShotByShotAlsoAfterItsProcessWasKilled()
    {
        using var screen = new DisplayScreen();
        var dark = screen.Picture();
        using var display = TheProgram.Start(screen.Inside, "display", "overhead", "--data", _data);
        var waiting = await screen.OtherThanAsync(dark, Stop);

        var session = Session([]);
        _shots.GrowTo(2);
        await session.ShotAsync(Stop);
        var first = await screen.OtherThanAsync(waiting, Stop);
        session.Kill();
        session.Dispose();
        _shots.GrowTo(4);
        using var again = TheProgram.Start([], "run", "--json", "--go-on", "--follow", _shots.File, "--data", _data);
        await again.ShotAsync(Stop);
        var later = await screen.OtherThanAsync(first, Stop);

        Assert.Equal(4, new[] { dark, waiting, first, later }.Distinct().Count());
    }

    [Fact]
    public async Task Display_Killed_LeavesTheSessionAlone()
    {
        using var screen = new DisplayScreen();
        using var session = Session([]);
        _shots.GrowTo(2);
        await session.ShotAsync(Stop);
        var dark = screen.Picture();
        using var display = TheProgram.Start(screen.Inside, "display", "overhead", "--data", _data);
        await screen.OtherThanAsync(dark, Stop);

        display.Kill();

        await EndsWellAsync(session);
    }

    [Fact]
    public async Task Run_ScreenWithoutGl_SaysSoAndTheSessionGoesOn()
    {
        using var screen = new DisplayScreen("-extension", "GLX");
        using var session = Session(screen.Inside, "--overhead", "--projector", "--windowed");

        var notice = await session.LineAsync(line => line.Contains("no window: ", StringComparison.Ordinal), Stop);

        Assert.Contains("OpenGL 3.3 could not be started here (GLX: ", notice, StringComparison.Ordinal);
        Assert.Contains("; the session goes on without", notice, StringComparison.Ordinal);
        await EndsWellAsync(session);
    }

    [Fact]
    public async Task Run_NoMonitorAtAll_SaysSoAndTheSessionGoesOn()
    {
        using var screen = new DisplayScreen();
        await screen.UnplugAsync(Stop);
        using var session = Session(screen.Inside, "--overhead", "--projector");

        await session.LineAsync(line => line.Contains("no monitor is connected", StringComparison.Ordinal), Stop);

        await EndsWellAsync(session);
    }

    [Fact]
    public async Task Run_ItsMonitorIsUnplugged_SaysSoAndTheSessionGoesOn()
    {
        using var screen = new DisplayScreen();
        using var session = Session(screen.Inside, "--projector", "1", "--overhead", "--windowed");
        await session.LineAsync(line => line.Contains("in a window on screen", StringComparison.Ordinal), Stop);
        _shots.GrowTo(2);
        await session.ShotAsync(Stop);

        await screen.UnplugAsync(Stop);

        await EndsWellAsync(session);
    }

    [Fact]
    public async Task Run_DisplayServerIsKilled_SaysSoAndTheSessionGoesOn()
    {
        using var screen = new DisplayScreen();
        using var session = Session(screen.Inside, "--projector", "--overhead", "--windowed");
        _shots.GrowTo(2);
        await session.ShotAsync(Stop);

        screen.Kill();
        await session.LineAsync(line => line.Contains("the display was lost (", StringComparison.Ordinal), Stop);

        await EndsWellAsync(session);
    }

    [Fact]
    public async Task Run_MonitorThatIsNotThere_IsWrongUsageAndTouchesNoRecord()
    {
        using var screen = new DisplayScreen();

        var ran = await TheProgram.RunAsync(screen.Inside, Stop, "run", "--drill", _drill, "--overhead", "2", "--simulate", "--data", _data);

        Assert.Equal(2, ran.ExitCode);
        Assert.Equal("monitor: found 2; allowed: 1 (screen) (see: aimtrainer monitors)", ran.Error.Trim());
        Assert.False(Directory.Exists(_data));
    }

    private RunningProgram Session(IReadOnlyList<string> inside, params string[] more) => TheProgram.Start(
        inside, ["run", "--json", "--drill", _drill, "--bowler", "Fault Tester", "--follow", _shots.File, "--data", _data, .. more]);

    /// <summary>The rest of the shots come, and all are kept.</summary>
    private async Task EndsWellAsync(RunningProgram session)
    {
        _shots.GrowTo(_shotsInDrill);
        _shots.Finish();
        while (await session.NextLineAsync(Stop) is not null)
        {
        }

        var end = await session.EndAsync([]);
        Assert.True(end.ExitCode == 0, end.Error);
        var stored = (await TheProgram.RunAsync(Stop, "sessions", "export", "last", "--data", _data)).Good().Lines;
        Assert.Equal(1 + _shotsInDrill, stored.Count);
    }
}
