using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Tests;

public sealed class DisplayMonitorsTests
{
    private static readonly ValueList<MonitorInfo> _three =
    [
        new(1, "DP-1", 0, 0, new PictureSize(1920, 1200), 60, 520, 320),
        new(2, "HDMI-1", 1920, 0, new PictureSize(1280, 800), 60, 0, 0),
        new(3, "HDMI-2", 3200, 0, new PictureSize(1920, 1080), 60, 0, 0),
    ];

    [Theory]
    [InlineData(null, null, "HDMI-1", "HDMI-2")]
    [InlineData("3", null, "HDMI-2", "HDMI-1")]
    [InlineData(null, "HDMI-1", "HDMI-2", "HDMI-1")]
    [InlineData("1", "3", "DP-1", "HDMI-2")]
    public void For_ProjectorAndOverhead_EachItsOwnAndTheNamedFirst(string? projector, string? overhead, string first, string second)
    {
        var keys = DisplayMonitors.For([Wish(DisplayKind.Projector, projector), Wish(DisplayKind.Overhead, overhead)], _three, mayCoverPrimary: false);

        Assert.Equal([new MonitorKey(first, 1), new MonitorKey(second, 1)], keys);
    }

    [Fact]
    public void For_PrimaryOnly_IsCoveredOnlyWhereNobodyTypes()
    {
        ValueList<MonitorInfo> one = [_three[0]];
        var wish = Wish(DisplayKind.Projector, null);

        Assert.Equal([null], DisplayMonitors.For([wish], one, mayCoverPrimary: false));
        Assert.Equal([new MonitorKey("DP-1", 1)], DisplayMonitors.For([wish], one, mayCoverPrimary: true));
        Assert.Equal([null], DisplayMonitors.For([wish with { Windowed = true }], _three, mayCoverPrimary: true));
        Assert.Equal([null], DisplayMonitors.For([wish], [], mayCoverPrimary: true));
    }

    [Fact]
    public void For_MonitorThatIsNotThere_SaysWhichAre()
    {
        var problem = Assert.Throws<UserException>(() => DisplayMonitors.For([Wish(DisplayKind.Projector, "4")], _three, false));

        Assert.Equal("monitor: found 4; allowed: 1 (DP-1), 2 (HDMI-1), 3 (HDMI-2) (see: aimtrainer monitors)", problem.Message);
        Assert.Equal(ExitCodes.BadInput, problem.ExitCode);
    }

    [Fact]
    public void For_OneMonitorForTwo_SaysSo()
    {
        var problem = Assert.Throws<UserException>(
            () => DisplayMonitors.For([Wish(DisplayKind.Projector, "2"), Wish(DisplayKind.Overhead, "hdmi-1")], _three, false));

        Assert.Equal("monitor: hdmi-1 is asked for twice; give each display its own (see: aimtrainer monitors)", problem.Message);
    }

    private static DisplayWish Wish(DisplayKind kind, string? monitor) => new(kind, monitor, false);
}
