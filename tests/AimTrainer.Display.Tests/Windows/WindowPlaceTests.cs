using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

public sealed class WindowPlaceTests
{
    private static readonly MonitorInfo _desk = new(1, "DP-1", 0, 0, new PictureSize(1920, 1200), 60, 520, 320);
    private static readonly MonitorInfo _projector = new(2, "HDMI-1", 1920, 0, new PictureSize(1280, 800), 60, 0, 0);
    private static readonly MonitorInfo _twin = new(3, "HDMI-1", 3200, 0, new PictureSize(1024, 768), 60, 0, 0);
    private static readonly WindowWish _wish = new() { Title = "Projector", Covers = new MonitorKey("HDMI-1", 1) };

    [Fact]
    public void For_ItsMonitorIsThere_CoversIt() =>
        Assert.Equal(new WindowPlace(true, 1920, 0, new PictureSize(1280, 800), _projector, null), WindowPlace.For(_wish, [_desk, _projector]));

    [Fact]
    public void For_ItsMonitorIsAway_AWindowOnThePrimaryOne()
    {
        var place = WindowPlace.For(_wish, [_desk]);

        Assert.Equal(new WindowPlace(false, 320, 240, new PictureSize(1280, 720), _desk, "HDMI-1"), place);
    }

    [Fact]
    public void For_NoMonitor_KeepsItsSizeAndSaysWhatIsMissing() =>
        Assert.Equal(new WindowPlace(false, 0, 0, new PictureSize(1280, 720), null, "HDMI-1"), WindowPlace.For(_wish, []));

    [Fact]
    public void For_SmallMonitor_TheWindowFits() =>
        Assert.Equal(new PictureSize(720, 432), WindowPlace.For(_wish with { Covers = null }, [_desk with { Mode = new PictureSize(800, 480) }]).Size);

    [Fact]
    public void For_TinyMonitor_TheWindowStaysBigEnoughToHold() =>
        Assert.Equal(new PictureSize(160, 160), WindowPlace.For(_wish with { Covers = null }, [_desk with { Mode = new PictureSize(1, 1) }]).Size);

    [Fact]
    public void Key_TwinsBySide_TellsThemApartWhateverTheirOrder()
    {
        ValueList<MonitorInfo> all = [_desk, _twin, _projector];

        Assert.Equal(new MonitorKey("HDMI-1", 2), MonitorKey.Of(_twin, all));
        Assert.Equal(_projector, new MonitorKey("HDMI-1", 1).Find(all));
        Assert.Null(new MonitorKey("HDMI-1", 3).Find(all));
    }

    [Fact]
    public void NameForMaps_Twins_AreTwoAndOneAloneIsAnother()
    {
        var names = MonitorInfo.ToldApart([_desk, _twin, _projector]).Select(monitor => monitor.NameForMaps);

        Assert.Equal(["DP-1", "HDMI-1 (2 of 2)", "HDMI-1 (1 of 2)"], names);
        Assert.Equal(["DP-1", "HDMI-1"], MonitorInfo.ToldApart([_desk, _twin]).Select(monitor => monitor.NameForMaps));
    }

    [Theory]
    [InlineData("2", 2)]
    [InlineData("hdmi-1", 2)]
    [InlineData("DP-1", 1)]
    public void Choose_NumberOrName_FindsIt(string wanted, int number) =>
        Assert.Equal(number, MonitorList.Choose([_desk, _projector], wanted).Monitor!.Number);

    [Theory]
    [InlineData("3")]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("beamer")]
    public void Choose_Another_SaysWhatThereIs(string wanted) =>
        Assert.Equal($"monitor: found {wanted}; allowed: 1 (DP-1), 2 (HDMI-1)", MonitorList.Choose([_desk, _projector], wanted).Problem);

    [Fact]
    public void Choose_NoMonitors_SaysSo() => Assert.Equal("monitor 1: no monitor is connected", MonitorList.Choose([], "1").Problem);
}
