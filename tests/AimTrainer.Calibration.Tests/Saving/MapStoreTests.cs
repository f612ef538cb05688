namespace AimTrainer.Calibration.Tests;

public sealed class MapStoreTests : IDisposable
{
    private static readonly MonitorMode Here = new("HDMI-1", ThrownPicture.FullHd, 60);
    private static readonly MapPlace Near = new(3, "near");

    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-maps-").FullName;
    private readonly MapStore _store;

    public MapStoreTests() => _store = new MapStore(_folder, new Frozen());

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Load_SavedMap_IsTheSameBitForBit()
    {
        var chance = new Chance(90);
        for (var i = 0; i < 20; i++)
        {
            var saved = Made(chance, Near, i % 3);
            var stored = _store.Save(saved);
            var load = _store.Load(Near, Here);

            Assert.Equal("", stored.Problem);
            Assert.Equal((stored.File, ""), (load.File, load.Why));
            Assert.Equal(saved.Map, load.Map!.Map);
            Assert.Equal(
                (saved.RmsPixels, saved.WorstPixels, saved.LeaveOneOutPixels, saved.DistortionTerms),
                (load.Map.RmsPixels, load.Map.WorstPixels, load.Map.LeaveOneOutPixels, load.Map.DistortionTerms));
            Assert.Equal(saved.Marks.Count, load.Map.Marks.Count);
            Assert.Equal(new Frozen().GetUtcNow(), load.Map.SavedAt);
        }

        Assert.Equal(MapStore.Kept, Directory.GetFiles(_folder).Length);
    }

    [Fact]
    public void Load_Nothing_SaysNotCalibrated()
    {
        var load = new MapStore(Path.Combine(_folder, "none"), new Frozen()).Load(Near, Here);
        Assert.Null(load.Map);
        Assert.Equal("the projector \"near\" of station 3 is not calibrated yet: calibrate it", load.Why);
    }

    [Theory]
    [InlineData("DP-2", 1920, 1080, 60, "another monitor")]
    [InlineData("HDMI-1", 1280, 720, 60, "another size of picture")]
    [InlineData("HDMI-1", 1920, 1080, 50, "another refresh rate")]
    public void Load_MonitorOrModeChanged_MapIsNotUsedAndSaysWhy(string name, int width, int height, int hertz, string why)
    {
        _store.Save(Made(new Chance(91), Near));
        var now = new MonitorMode(name, new PictureSize(width, height), hertz);
        var load = _store.Load(Near, now);
        Assert.Null(load.Map);
        Assert.NotNull(load.File);
        Assert.Contains($"is not used: it is for {why} (HDMI-1 at 1920 x 1080, 60 Hz; now {now})", load.Why, StringComparison.Ordinal);
        Assert.NotNull(_store.Load(Near, Here).Map);
    }

    [Fact]
    public void Load_MonitorGone_SaysWhich()
    {
        _store.Save(Made(new Chance(92), Near));
        var load = _store.Load(Near, null);
        Assert.Null(load.Map);
        Assert.Contains("for the monitor HDMI-1, which is not there", load.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Load_NewestBroken_SaidWithFileLineAndPathAndLastGoodUsed()
    {
        var good = _store.Save(Made(new Chance(93), Near)).File!;
        var broken = _store.Save(Made(new Chance(94), Near)).File!;
        File.WriteAllText(broken, File.ReadAllText(broken).Replace("\"feet\"", "\"foot\"", StringComparison.Ordinal));

        var load = _store.Load(Near, Here);

        Assert.Equal(good, load.File);
        Assert.NotNull(load.Map);
        Assert.Equal("a newer map cannot be read, so the last good one is used, of 2026-03-02 18:00 UTC", load.Why);
        Assert.Contains(
            load.Broken, problem => problem.ToString().StartsWith($"{broken}:", StringComparison.Ordinal) && problem.Line > 1 && problem.Path.StartsWith("$.marks[0]", StringComparison.Ordinal));
    }

    [Fact]
    public void Load_CutShortAnywhere_NeverUsedAndLastGoodIs()
    {
        // A disk that lost the end of the newest file, at every length.
        var good = _store.Save(Made(new Chance(95), Near)).File!;
        var cut = _store.Save(Made(new Chance(96), Near)).File!;
        var bytes = File.ReadAllBytes(cut);
        for (var length = 0; length < bytes.Length - 2; length += 7)
        {
            File.WriteAllBytes(cut, bytes[..length]);
            Assert.Equal(good, _store.Load(Near, Here).File);
        }
    }

    [Fact]
    public void Save_KilledBeforeTheRename_OldMapHoldsAndTheRestIsClearedAway()
    {
        // What a kill between writing and renaming leaves: the unfinished file, whole or in part.
        var old = _store.Save(Made(new Chance(97), Near)).File!;
        var left = Path.Combine(_folder, "station-3.near.0002.json.unfinished");
        foreach (var content in (byte[][])[[], File.ReadAllBytes(old)[..100], File.ReadAllBytes(old)])
        {
            File.WriteAllBytes(left, content);
            Assert.Equal(old, _store.Load(Near, Here).File);
        }

        var next = _store.Save(Made(new Chance(98), Near)).File!;
        Assert.Equal(Path.Combine(_folder, "station-3.near.0002.json"), next);
        Assert.False(File.Exists(left));
        Assert.Equal(next, _store.Load(Near, Here).File);
    }

    [Fact]
    public void Undo_AfterSaves_GoesBackOneByOneThenSaysThereIsNoMore()
    {
        var maps = Enumerable.Range(0, 3).Select(i => Made(new Chance(100 + (ulong)i), Near)).ToList();
        maps.ForEach(map => _store.Save(map));

        Assert.Equal("", _store.Undo(Near).Problem);
        Assert.Equal(maps[1].Map, _store.Load(Near, Here).Map!.Map);
        Assert.Equal("", _store.Undo(Near).Problem);
        Assert.Equal(maps[0].Map, _store.Load(Near, Here).Map!.Map);
        Assert.Contains("has no earlier map to go back to", _store.Undo(Near).Problem, StringComparison.Ordinal);
        Assert.Equal(maps[0].Map, _store.Load(Near, Here).Map!.Map);

        // A save after undo holds, and the file that was gone back from does not come back.
        var again = Made(new Chance(110), Near);
        Assert.EndsWith("station-3.near.0004.json", _store.Save(again).File, StringComparison.Ordinal);
        Assert.Equal(again.Map, _store.Load(Near, Here).Map!.Map);
    }

    [Fact]
    public void LoadAll_SeveralProjectors_EachByItsOwnMonitor()
    {
        var far = new MonitorMode("DP-2", ThrownPicture.FullHd, 60);
        _store.Save(Made(new Chance(120), Near));
        _store.Save(Made(new Chance(121), new MapPlace(3, "far")) with { Monitor = far });
        _store.Save(Made(new Chance(122), new MapPlace(4, "near")));
        File.WriteAllText(Path.Combine(_folder, "station-3.middle.0001.json"), "{");

        var both = _store.LoadAll(3, [Here, far]);
        Assert.Equal([("far", true), ("middle", false), ("near", true)], both.AsEnumerable().Select(load => (load.Place.Projector, load.Map is not null)));
        Assert.Contains("no map of the projector \"middle\" of station 3 can be read", both[1].Why, StringComparison.Ordinal);
        Assert.Equal([false, false, true], _store.LoadAll(3, [Here]).AsEnumerable().Select(load => load.Map is not null));
    }

    [Fact]
    public void Load_FileCopiedFromAnotherStation_IsNotUsed()
    {
        var other = _store.Save(Made(new Chance(123), new MapPlace(4, "near"))).File!;
        File.Copy(other, Path.Combine(_folder, "station-3.near.0001.json"));
        var load = _store.Load(Near, Here);
        Assert.Null(load.Map);
        Assert.Contains(
            "found station 4, projector \"near\"; allowed: the station and projector that the name of the file says", load.Broken[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Save_FolderThatIsAFile_SaysSoAndThrowsNothing()
    {
        var file = Path.Combine(_folder, "file");
        File.WriteAllText(file, "");
        var stored = new MapStore(file, new Frozen()).Save(Made(new Chance(124), Near));
        Assert.Null(stored.File);
        Assert.Contains("the map was not saved", stored.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "near")]
    [InlineData(65, "near")]
    [InlineData(1, "")]
    [InlineData(1, "Near")]
    [InlineData(1, "../near")]
    public void Save_PlaceThatCannotBe_Throws(int station, string projector) =>
        Assert.Throws<ArgumentException>(() => _store.Save(Made(new Chance(125), new MapPlace(station, projector))));

    private static SavedMap Made(Chance chance, MapPlace place, int terms = 0)
    {
        var marks = ThrownPicture.At(chance).Marks(chance, 12, 0.3);
        var fit = MapFitter.Fit(marks, new FitSettings { Picture = ThrownPicture.FullHd, LaneWidth = ThrownPicture.LaneWidth, DistortionTerms = terms }).Fit;
        Assert.NotNull(fit);
        return SavedMap.Of(fit) with { Place = place, Monitor = Here };
    }

    private sealed class Frozen : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 2, 18, 0, 0, TimeSpan.Zero);
    }
}
