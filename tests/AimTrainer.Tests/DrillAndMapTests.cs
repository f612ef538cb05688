namespace AimTrainer.Tests;

public sealed class DrillAndMapTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Check_SeveralFiles_EachMistakeOfEachAndGoodOnesToo()
    {
        var bad = _work.File("bad.json", """
            { "format": 1, "id": "own", "name": "Own", "purpose": "A test.", "whoFor": "Tests.", "aboutMinutes": "ten",
              "blocks": [ { "name": "b", "kind": "trainin", "aims": [ { "name": "t", "mark": "arrow 2", "widthBoards": -3 } ] } ] }
            """);
        var good = Path.Combine(AppContext.BaseDirectory, "drills", "stairs.json");
        string[] paths = [bad, "/no/such.json", _work.File("empty.json", ""), good];

        var text = _work.Run(["drill", "check", .. paths]);
        var json = _work.Run(["drill", "check", "--json", .. paths]);

        Assert.Equal((2, 2), (text.Code, json.Code));
        Assert.Contains("bad.json:1: $.aboutMinutes: found \"ten\"; allowed:", text.Out, StringComparison.Ordinal);
        Assert.Contains("bad.json:2: $.blocks[0].kind: found \"trainin\"", text.Out, StringComparison.Ordinal);
        Assert.Contains("bad.json:2: $.blocks[0].aims[0].widthBoards: found -3", text.Out, StringComparison.Ordinal);
        Assert.Contains("/no/such.json: found no such file", text.Out, StringComparison.Ordinal);
        Assert.Contains("stairs.json: good (Stairs, 2 blocks)", text.Out, StringComparison.Ordinal);
        Assert.Equal([false, false, false, true], json.Json().GetProperty("files").EnumerateArray().Select(file => file.GetProperty("ok").GetBoolean()));
    }

    [Fact]
    public void List_OwnDrillAndShipped_OwnFirst()
    {
        Directory.CreateDirectory(Path.Combine(_work.Data, "drills"));
        File.Copy(Path.Combine(AppContext.BaseDirectory, "drills", "stairs.json"), Path.Combine(_work.Data, "drills", "stairs.json"));

        var text = _work.Run("drill", "list");
        var drills = _work.Run("drill", "list", "--json").Json().EnumerateArray().ToList();

        Assert.Matches("^id +minutes +purpose\nstairs \\(own\\) +25  Finds", text.Out);
        Assert.Single(drills, drill => drill.GetProperty("id").GetString() == "stairs" && !drill.GetProperty("shipped").GetBoolean());
        Assert.True(drills.Count >= 14);
    }

    [Fact]
    public void Show_EveryShippedDrill_TextAndOneDocument()
    {
        foreach (var id in SessionTests.ShippedDrills.Select(row => row.Data))
        {
            Assert.Equal(id, _work.Run("drill", "show", id, "--json").Json().GetProperty("id").GetString());
            Assert.Contains("Block 1: ", _work.Run("drill", "show", id, "--hand", "left").Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Map_SemicolonsDecimalCommasKmh_SavedAndUsed()
    {
        var shots = _work.File("club.csv", "Time;Board at 40 ft;Board at arrows;Speed (km/h)\n02.03.2026 18:00;7,5;14,5;27,36\n02.03.2026 18:01;8,0;15,25;28\n".Replace("02.03.2026 ", "2026-03-02T", StringComparison.Ordinal));
        var mapping = Path.Combine(_work.Folder, "club.map.json");

        var map = _work.Run("shots", "map", shots, "--out", mapping);
        var json = _work.Run("shots", "map", shots, "--json").Json();
        var replay = _work.Run("replay", "--drill", "two-point-line", "--shots", shots, "--map", mapping, "--json");

        Assert.Equal(0, map.Code);
        Assert.Contains("please check: ", map.Error, StringComparison.Ordinal);
        Assert.Equal(";", json.GetProperty("mapping").GetProperty("delimiter").GetString());
        Assert.True(json.GetProperty("mapping").GetProperty("decimalComma").GetBoolean());
        Assert.True(replay.Code == 0, replay.Error);
        var targets = replay.Json().GetProperty("blocks")[0].GetProperty("shots").EnumerateArray().SelectMany(shot => shot.GetProperty("targets").EnumerateArray());
        Assert.Equal([14.5, 7.5, 15.25, 8], targets.Select(target => target.GetProperty("crossingBoard").GetDouble()));
    }

    [Fact]
    public void Map_HeadingsOfNoKnownLanguage_SaysWhatIsMissing()
    {
        var map = _work.Run("shots", "map", _work.File("x.csv", "aa;bb\n1,5;2,5\n"));

        Assert.Equal(0, map.Code);
        Assert.Contains("no heading was recognised as a place of the ball", map.Error, StringComparison.Ordinal);
        Assert.Contains("not recognised, and left out: aa, bb", map.Error, StringComparison.Ordinal);
    }
}
