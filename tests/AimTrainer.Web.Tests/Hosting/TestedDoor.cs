using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Setup;

namespace AimTrainer.Web.Tests;

/// <summary>A calibration as <c>aimtrainer calibrate --host</c> runs it, but for its window.</summary>
internal sealed class TestedDoor : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-door-").FullName;
    private ProjectorLink _link = null!;

    private TestedDoor(int station, string projector)
    {
        var task = new CalibrationTask(new MapPlace(station, projector), LaneProfileReader.Default, null);
        Desk = new CalibrationDesk(task, new MapStore(_folder, TimeProvider.System), () => _link?.Changed(), _ => { });
        Desk.Placed(new PictureSize(1280, 720), new MonitorMode("screen", new PictureSize(1280, 720), 60), null);
    }

    public CalibrationDesk Desk { get; }

    /// <summary>What the line said of itself.</summary>
    public System.Collections.Concurrent.ConcurrentQueue<string> Said { get; } = new();

    /// <summary>Opens it to a host, and waits until the host has it.</summary>
    public static async Task<TestedDoor> OpenAsync(TestHost host, int station = 1, string projector = "lane", string? code = null)
    {
        var door = new TestedDoor(station, projector);
        door._link = await ProjectorLink.OpenAsync(host.Address, () => code, door.Said.Enqueue, TimeProvider.System, TestContext.Current.CancellationToken);
        door._link.Begin(door.Desk);
        await UntilAsync(() => door.Said.Any(text => text.Contains("can be set up", StringComparison.Ordinal)));
        return door;
    }

    /// <summary>Waits for something that another thread does; never, and the test is ended from outside.</summary>
    public static async Task UntilAsync(Func<bool> holds)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(5));
        while (!holds())
        {
            await timer.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Closes the line, as the end of the command does.</summary>
    public Task CloseAsync() => _link.CloseAsync();

    public async ValueTask DisposeAsync()
    {
        await _link.CloseAsync();
        _link.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
