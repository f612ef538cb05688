using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

/// <summary>Maps of several projectors that share a lane.</summary>
public sealed class JoinedMapsTests : IDisposable
{
    private static readonly MonitorMode NearMonitor = new("HDMI-1", ThrownPicture.FullHd, 60), FarMonitor = new("DP-2", ThrownPicture.FullHd, 60);
    private static readonly MapPlace Near = new(3, "near"), Far = new(3, "far");

    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-maps-").FullName;
    private readonly Ticking _clock = new();
    private readonly MapStore _store;

    public JoinedMapsTests() => _store = new MapStore(_folder, _clock);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void SaveJoined_SecondProjector_BothFilesShareTheOverlapSoThatLightAddsUp()
    {
        Assert.Empty(_store.SaveJoined(Made(Near, NearMonitor, 0, 34)).Remarks.AsEnumerable());
        var stored = _store.SaveJoined(Made(Far, FarMonitor, 28, 60));

        Assert.Equal("", stored.Problem);
        Assert.Empty(stored.Remarks.AsEnumerable());
        var (near, far) = (_store.Load(Near, NearMonitor).Map!.Map.Stretch, _store.Load(Far, FarMonitor).Map!.Map.Stretch);
        Assert.Equal((6.0, 6.0), (near.FarOverlap.Value, far.NearOverlap.Value));
        for (var feet = 0.05; feet < 60; feet += 0.1)
        {
            Assert.Equal(1, near.WeightAt(Feet.FromFeet(feet)) + far.WeightAt(Feet.FromFeet(feet)), 9);
        }

        Assert.All(_store.LoadAll(3, [NearMonitor, FarMonitor]).AsEnumerable(), load => Assert.Equal("", load.Why));
    }

    [Fact]
    public void LoadAll_OverlapsThatDisagree_AreWorkedOutAnewAndItSaysSo()
    {
        _store.SaveJoined(Made(Near, NearMonitor, 0, 34));
        _store.SaveJoined(Made(Far, FarMonitor, 28, 60));

        // What a power cut after the first of two files leaves.
        _store.Save(Made(Near, NearMonitor, 0, 38));

        var loads = _store.LoadAll(3, [NearMonitor, FarMonitor]);
        Assert.Equal([10.0, 10.0], loads.AsEnumerable().Select(load => Math.Max(load.Map!.Map.Stretch.NearOverlap.Value, load.Map.Map.Stretch.FarOverlap.Value)));
        Assert.All(loads.AsEnumerable(), load => Assert.Contains("was worked out anew", load.Why, StringComparison.Ordinal));
    }

    [Fact]
    public void SaveJoined_GapBetweenProjectors_IsSavedAndSaid()
    {
        _store.SaveJoined(Made(Near, NearMonitor, 0, 20));

        var stored = _store.SaveJoined(Made(Far, FarMonitor, 25, 60));

        Assert.NotNull(stored.File);
        Assert.Contains("nobody draws the lane from 20 to 25 ft", Assert.Single(stored.Remarks.AsEnumerable()), StringComparison.Ordinal);
        var loads = _store.LoadAll(3, [NearMonitor, FarMonitor]);
        Assert.All(loads.AsEnumerable(), load => Assert.NotNull(load.Map));
        Assert.All(loads.AsEnumerable(), load => Assert.Contains("do not share the lane well", load.Why, StringComparison.Ordinal));
    }

    [Fact]
    public void LoadAll_MonitorCalibratedAgainUnderAnotherName_TheNewerCountsAndItSaysHowToPutTheOldAside()
    {
        _store.SaveJoined(Made(new MapPlace(3, "lane"), NearMonitor, 0, 60));
        _store.SaveJoined(Made(Near, NearMonitor, 0, 34));

        var loads = _store.LoadAll(3, [NearMonitor]);
        Assert.Equal([("lane", false), ("near", true)], loads.AsEnumerable().Select(load => (load.Place.Projector, load.Map is not null)));
        Assert.Contains("aimtrainer calibrate forget --station 3 --name lane", loads[0].Why, StringComparison.Ordinal);

        Assert.NotNull(_store.Forget(new MapPlace(3, "lane")).File);
        Assert.Equal("near", Assert.Single(_store.LoadAll(3, [NearMonitor]).AsEnumerable()).Place.Projector);
        Assert.Contains("has no map", _store.Forget(new MapPlace(3, "lane")).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void LoadAll_NeighbourForgotten_DrawsItsWholeStretchAgain()
    {
        _store.SaveJoined(Made(Near, NearMonitor, 0, 34));
        _store.SaveJoined(Made(Far, FarMonitor, 28, 60));
        _store.Forget(Far);

        var near = Assert.Single(_store.LoadAll(3, [NearMonitor]).AsEnumerable());

        Assert.Equal(1, near.Map!.Map.Stretch.WeightAt(Feet.FromFeet(33)));
    }

    [Fact]
    public void Undo_ManyTimes_KeepsFiveOfWhatWasPutAside()
    {
        for (var i = 0; i < 4; i++)
        {
            for (var save = 0; save < 3; save++)
            {
                _store.Save(Made(Near, NearMonitor, 0, 60));
            }

            _store.Undo(Near);
            _store.Undo(Near);
        }

        var undone = Directory.GetFiles(_folder, "*.undone").Select(Path.GetFileName).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(MapStore.Kept, undone.Count);
        Assert.Equal("station-3.near.0012.json.undone", undone[^1]);
        Assert.EndsWith("station-3.near.0013.json", _store.Save(Made(Near, NearMonitor, 0, 60)).File, StringComparison.Ordinal);
    }

    [Fact]
    public void Load_SystemDoesNotSayTheRefreshRate_HoldsThere()
    {
        var silent = NearMonitor with { RefreshHertz = 0 };
        _store.Save(Made(Near, silent, 0, 60));

        Assert.NotNull(_store.Load(Near, silent).Map);
        Assert.Equal("HDMI-1 at 1920 x 1080", silent.ToString());
    }

    private static SavedMap Made(MapPlace place, MonitorMode monitor, double from, double to)
    {
        var chance = new Chance(700);
        var settings = new FitSettings
        {
            Picture = ThrownPicture.FullHd,
            LaneWidth = ThrownPicture.LaneWidth,
            Stretch = new LaneStretch(Feet.FromFeet(from), Feet.FromFeet(to), default, default),
        };
        var fit = MapFitter.Fit(ThrownPicture.At(chance).Marks(chance, 12, 0.3), settings).Fit;
        Assert.NotNull(fit);
        return SavedMap.Of(fit) with { Place = place, Monitor = monitor };
    }

    private sealed class Ticking : TimeProvider
    {
        private int _ticks;

        public override DateTimeOffset GetUtcNow() => new DateTimeOffset(2026, 3, 2, 18, 0, 0, TimeSpan.Zero).AddSeconds(_ticks++);
    }
}
