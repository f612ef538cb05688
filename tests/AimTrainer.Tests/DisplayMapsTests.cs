using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Tests;

public sealed class DisplayMapsTests : IDisposable
{
    private static readonly PictureSize _size = new(1280, 800);
    private static readonly MonitorInfo _monitor = new(2, "HDMI-1", 1920, 0, _size, 60, 0, 0);
    private static readonly WindowPlace _covering = new(true, 1920, 0, _size, _monitor, null);

    private readonly Workplace _work = new();
    private readonly List<string> _said = [];
    private readonly DisplayMaps _maps;

    public DisplayMapsTests() => _maps = new DisplayMaps(_work.Data, 1, _said.Add);

    public void Dispose() => _work.Dispose();

    [Fact]
    public void For_AWindow_TheStraightMap()
    {
        var choice = _maps.For(new WindowPlace(false, 0, 0, _size, _monitor, null), _size);

        Assert.Equal(DisplayMaps.Straight(_size), choice.Map);
        Assert.Empty(_said);
    }

    [Fact]
    public void For_NothingSaved_NoMapAndSaidOnce()
    {
        Assert.Equal(new MapChoice(null, null), _maps.For(_covering, _size));
        Assert.Equal(new MapChoice(null, null), _maps.For(_covering, new PictureSize(10, 10)));

        Assert.Equal("no map for HDMI-1 at 1280 x 800, 60 Hz: the projector shows no target until it is calibrated (aimtrainer calibrate)", Assert.Single(_said));
    }

    [Fact]
    public void For_SavedForThisMonitorAndMode_IsThatMapAlsoWhenSavedMeanwhile()
    {
        _maps.For(_covering, _size);
        var saved = Save(new MonitorMode("HDMI-1", _size, 60), 1);

        Assert.Equal(saved, _maps.For(_covering, _size).Map);
    }

    [Fact]
    public void For_SavedForAnotherMode_IsNotUsedAndSaysWhy()
    {
        Save(new MonitorMode("HDMI-1", new PictureSize(1024, 768), 60), 1);

        var choice = _maps.For(_covering, _size);

        Assert.Null(choice.Map);
        Assert.Equal("The map of this projector is not used: see the console.", choice.Why);
        Assert.Contains("it is for another size of picture", Assert.Single(_said), StringComparison.Ordinal);
    }

    [Fact]
    public void For_AnotherStationsMap_IsNotUsed()
    {
        Save(new MonitorMode("HDMI-1", _size, 60), 2);

        Assert.Null(_maps.For(_covering, _size).Map);
    }

    [Fact]
    public void For_NewestFileIsBroken_TheLastGoodOneAndSaysWhatIsWrong()
    {
        var good = Save(new MonitorMode("HDMI-1", _size, 60), 1);
        Save(new MonitorMode("HDMI-1", _size, 60), 1);
        var newest = Directory.EnumerateFiles(Path.Combine(_work.Data, "maps")).Order(StringComparer.Ordinal).Last();
        File.WriteAllText(newest, "{ \"format\": 1,");

        Assert.Equal(good, _maps.For(_covering, _size).Map);
        Assert.Contains(newest, Assert.Single(_said), StringComparison.Ordinal);
        Assert.Contains("the last good one is used", _said[0], StringComparison.Ordinal);
    }

    [Fact]
    public void For_ItsMonitorIsAway_NoMap()
    {
        Save(new MonitorMode("HDMI-1", _size, 60), 1);

        var choice = _maps.For(new WindowPlace(false, 0, 0, _size, null, "HDMI-1"), _size);

        Assert.Equal(new MapChoice(null, "Monitor HDMI-1 is away, and this window has no map."), choice);
    }

    [Fact]
    public void Straight_EveryUsualSize_CanBeDrawnByAndHoldsTheLane()
    {
        foreach (var size in (PictureSize[])[new(1920, 1080), new(1024, 768), new(3840, 2160), new(7680, 4320), new(320, 180)])
        {
            var map = DisplayMaps.Straight(size);

            Assert.Null(MapCheck.ProblemOf(map));
            var (right, left) = (map.PixelOf(At(0, 0)), map.PixelOf(At(41.5, 60)));
            Assert.True(right.X > left.X && right.Y > left.Y, $"the right edge is on the right, the foul line below: {right}, {left}");
            Assert.All([right, left], pixel => Assert.True(pixel.X > 0 && pixel.X < size.Width && pixel.Y > 0 && pixel.Y < size.Height));
        }
    }

    [Fact]
    public void Read_BrokenMap_SaysWhereInTheFile()
    {
        var file = _work.File("map.json", "{ \"format\": 1 }");

        Assert.Contains(file, Assert.Throws<UserException>(() => DisplayMaps.Read(file)).Message, StringComparison.Ordinal);
    }

    private static LanePoint At(double inches, double feet) => new(Inches.FromInches(inches), Feet.FromFeet(feet));

    private ProjectorMap Save(MonitorMode monitor, int station)
    {
        var map = DisplayMaps.Straight(monitor.Size);
        var saved = new MapStore(Path.Combine(_work.Data, "maps"), TimeProvider.System).Save(new SavedMap
        {
            Place = new MapPlace(station, MapPlace.OnlyProjector),
            Monitor = monitor,
            Map = map,
            LaneWidth = Inches.FromInches(41.5),
            DistortionTerms = 0,
            Marks = [],
        });
        Assert.Equal("", saved.Problem);
        return map;
    }
}
