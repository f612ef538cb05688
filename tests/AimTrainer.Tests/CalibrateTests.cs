using System.Globalization;
using System.Text.Json;
using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Tests;

public sealed class CalibrateTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void FitThenMap_MarksOfAKnownMap_MatrixAndPointsBothWays()
    {
        var map = Path.Combine(_work.Folder, "map.json");
        var fit = _work.Run("calibrate", "fit", "--marks", Marks(), "--out", map, "--json");

        Assert.True(fit.Code == 0, fit.Error);
        var json = fit.Json();
        Assert.True(json.GetProperty("ok").GetBoolean());
        double[] expected = [.. Known().SelectMany(row => row)];
        double[] found = [.. json.GetProperty("matrix").EnumerateArray().SelectMany(row => row.EnumerateArray()).Select(number => number.GetDouble())];
        Assert.Equal(9, found.Length);
        Assert.All(expected.Zip(found), pair => Assert.InRange(pair.Second, pair.First - 1e-9, pair.First + 1e-9));
        Assert.InRange(json.GetProperty("rmsPixels").GetDouble(), 0, 1e-9);
        Assert.InRange(json.GetProperty("worstPixels").GetDouble(), 0, 1e-9);
        Assert.InRange(json.GetProperty("leaveOneOutPixels").GetDouble(), 0, 1e-9);
        Assert.Equal(["terms 0", "k1 0", "k2 0"], json.GetProperty("distortion").EnumerateObject().Select(term => $"{term.Name} {term.Value}"));
        Assert.Equal(6, json.GetProperty("marks").GetArrayLength());
        Assert.All(json.GetProperty("marks").EnumerateArray(), mark => Assert.InRange(mark.GetProperty("errorBoards").GetDouble(), -1e-9, 1e-9));

        var (x, y) = At(20, 45);
        var points = _work.File("points.json", string.Create(
            CultureInfo.InvariantCulture, $$"""{ "points": [ { "boardFromRight": 20, "feet": 45 }, { "x": {{x:R}}, "y": {{y:R}} }, { "x": 960, "y": -9000 } ] }"""));
        var answers = _work.Run("calibrate", "map", "--map", map, "--points", points, "--json").Json().GetProperty("points").EnumerateArray().ToList();
        Assert.InRange(answers[0].GetProperty("x").GetDouble(), x - 1e-9, x + 1e-9);
        Assert.InRange(answers[0].GetProperty("y").GetDouble(), y - 1e-9, y + 1e-9);
        Assert.InRange(answers[1].GetProperty("boardFromRight").GetDouble(), 20 - 1e-9, 20 + 1e-9);
        Assert.InRange(answers[1].GetProperty("feet").GetDouble(), 45 - 1e-9, 45 + 1e-9);
        Assert.True(answers[1].GetProperty("inPicture").GetBoolean() && answers[1].GetProperty("onLane").GetBoolean() && answers[1].GetProperty("inStretch").GetBoolean());
        Assert.Equal(JsonValueKind.Null, answers[2].GetProperty("feet").ValueKind);
        Assert.Contains("above the horizon", answers[2].GetProperty("why").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("calibrate: say which projector, as --monitor MONITOR (see: aimtrainer monitors), or --windowed", "calibrate")]
    [InlineData("calibrate check: say which projector", "calibrate", "check")]
    [InlineData("--monitor, --windowed: give one of them", "calibrate", "--monitor", "1", "--windowed")]
    [InlineData("--name: found projector \"Near!\"; allowed: small letters, digits and hyphens", "calibrate", "--monitor", "1", "--name", "Near!")]
    [InlineData("--from, --to: found 30 to 20 ft; allowed: an end farther down the lane than the start", "calibrate", "--monitor", "1", "--from", "30", "--to", "20")]
    [InlineData("--from, --to: this stretch holds 0 of the lane's own marks", "calibrate", "--monitor", "1", "--from", "1", "--to", "2")]
    [InlineData("the projector \"near\" of station 2 has no map", "calibrate", "forget", "--station", "2", "--name", "near")]
    [InlineData("--host: found lane.example; allowed: the console's address", "calibrate", "--windowed", "--host", "lane.example")]
    [InlineData("--host: found ftp://lane.example; allowed: the console's address", "calibrate", "--windowed", "--host", "ftp://lane.example")]
    public void ByHand_WrongUsage_SaysWhatIsAllowedBeforeAnyWindow(string said, params string[] words)
    {
        var ran = _work.Run(words);

        Assert.Equal(2, ran.Code);
        Assert.Contains(said, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_ForPeople_SaysErrorsAndCautions()
    {
        var fit = _work.Run("calibrate", "fit", "--marks", Marks());
        Assert.Equal(0, fit.Code);
        Assert.Contains("Map from 6 marks, 0 distortion terms; it draws ", fit.Out, StringComparison.Ordinal);
        Assert.Matches(@"\n +45 +0\.175 +2\.06 +0\.52 +0\.000\n", fit.Out);
        Assert.Contains("Nobody walks past the foul line", fit.Out, StringComparison.Ordinal);
        Assert.Contains("Do not look into the beam", fit.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("-0.0", fit.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_CoarsePicture_FlagsTheTargetWithNumbersAndWhatHelps()
    {
        var fit = _work.Run("calibrate", "fit", "--marks", Marks(), "--target-pixels", "6", "--json").Json();
        var warning = Assert.Single(fit.GetProperty("warnings").EnumerateArray()).GetString();
        Assert.Matches(
            "^a target of 1 board at 63 ft cannot be shown as it is graded: 4.5 pixels wide, needed 6; .* What would help: .*a nearer mount.*a longer lens.*a second projector", warning);
        var at45 = fit.GetProperty("distances").EnumerateArray().Single(at => at.GetProperty("feet").GetDouble() == 45);
        Assert.False(at45.GetProperty("oneBoardShown").GetBoolean());
        Assert.InRange(at45.GetProperty("narrowestTargetBoards").GetDouble(), 1.0, 1.1);
    }

    [Theory]
    [InlineData("0.5, 0, 1310.2, 1040", "39.5, 0, 605.1, 1038.5", "", "", 2, "tooFewMarks", "there are 2 marks; a map needs at least 4")]
    [InlineData("0.5, 0, 1310.2, 1040", "39.5, 0, 605.1, 1038.5", "39.5, 60, 870, 140", "0.5, 60, 1052, 1400", 4, "offPicture", "marks.json:4: $.marks[3]: mark 4 (board 0.5 from the right at 60 ft) is at pixel (1052, 1400)")]
    [InlineData("0.5, 0, 605.1, 1040", "39.5, 0, 1310.2, 1038.5", "39.5, 60, 870, 140", "0.5, 60, 1052, 141", 4, "swappedMarks", "have each other's pixels")]
    [InlineData("0.5, 0, 605.1, 1040", "39.5, 0, 1310.2, 1038.5", "39.5, 60, 1052, 140", "0.5, 60, 870, 141", 4, "mirrored", "as in a mirror")]
    [InlineData("0.5, 0, 1310.2, 1040", "0.5, 0, 605.1, 1038.5", "39.5, 60, 870, 140", "0.5, 60, 1052, 141", 4, "duplicateMarks", "are the same place on the lane")]
    [InlineData("5, 7.5, 1310.2, 1040", "8, 7.5, 605.1, 1038.5", "11, 7.5, 870, 140", "0.5, 60, 1052, 141", 4, "inALine", "lie in a line on the lane")]
    public void Fit_MarksThatGiveNoMap_ReasonInWordsAndJson(string a, string b, string c, string d, int count, string reason, string words)
    {
        string[] marks = [a, b, c, d];
        var file = _work.File("marks.json", $"{{ \"marks\": [{string.Join(",\n", marks.Where(mark => mark.Length > 0).Select(Mark))}] }}");
        var map = Path.Combine(_work.Folder, "map.json");
        var fit = _work.Run("calibrate", "fit", "--marks", file, "--out", map, "--json");

        Assert.Equal(2, fit.Code);
        Assert.Equal(count, marks.Count(mark => mark.Length > 0));
        Assert.False(File.Exists(map));
        Assert.False(fit.Json().GetProperty("ok").GetBoolean());
        Assert.Equal(reason, fit.Json().GetProperty("refusals")[0].GetProperty("reason").GetString());
        Assert.Contains(words, fit.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", fit.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fit --marks none.json", "none.json: no such file")]
    [InlineData("fit", "--marks")]
    [InlineData("fit --marks x --distortion 3", "--distortion: found 3; allowed: a whole number from 0 to 2")]
    [InlineData("map --map none.json --points x", "none.json: no such file")]
    [InlineData("undo --projector A!", "--name: found projector \"A!\"; allowed: small letters, digits and hyphens")]
    [InlineData("undo", "the projector \"lane\" of station 1 has no earlier map to go back to")]
    public void Calibrate_WrongUsage_OneLineAndExitCode2(string line, string words)
    {
        var ran = _work.Run(["calibrate", .. line.Split(' ')]);
        Assert.Equal(2, ran.Code);
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_PictureThatLeavesOutAnEdge_SaysWhere()
    {
        // The near end hangs out of a picture that is cut off at 1250 pixels; the marks on it lie farther down.
        (double Board, double Feet)[] places = [(2, 20), (38, 20), (38, 60), (2, 60), (10, 30), (30, 41.5)];
        var marks = places.Select(Lit);
        var file = _work.File(
            "cut.json", $$"""{ "picture": { "width": 1250, "height": 1080 }, "stretch": { "fromFeet": 0, "toFeet": 60 }, "marks": [{{string.Join(",", marks)}}] }""");
        var warning = Assert.Single(_work.Run("calibrate", "fit", "--marks", file, "--json").Json().GetProperty("warnings").EnumerateArray()).GetString();
        Assert.StartsWith("the picture leaves out a part of the lane's width at 0 ft: no target can be shown there", warning, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("calibrate")]
    [InlineData("calibrate fit")]
    [InlineData("calibrate map")]
    [InlineData("calibrate list")]
    [InlineData("calibrate undo")]
    [InlineData("calibrate check")]
    [InlineData("calibrate forget")]
    public void Help_EveryCommand_SaysWhatItDoes(string command)
    {
        var help = _work.Run([.. command.Split(' '), "--help"]);
        Assert.Equal(0, help.Code);
        Assert.Contains("Description:", help.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Map_BrokenFiles_FileLineAndPath()
    {
        var map = _work.File("map.json", "{ \"format\": 1,\n \"matrix\": 5 }");
        var ran = _work.Run("calibrate", "map", "--map", map, "--points", map);
        Assert.Equal(2, ran.Code);
        Assert.Contains("map.json:2: $.matrix: found 5; allowed: a list of 3 to 3 lists", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ListAndUndo_SavedMaps_NewestThenTheOneBefore()
    {
        Assert.Contains("no map is saved yet", _work.Run("calibrate", "list").Out, StringComparison.Ordinal);
        var map = Path.Combine(_work.Folder, "map.json");
        _work.Run("calibrate", "fit", "--marks", Marks(), "--out", map);
        var saved = MapFileReader.Read(map, File.ReadAllBytes(map)).Value! with
        {
            Place = new MapPlace(2, "near"),
            Monitor = new MonitorMode("HDMI-1", new PictureSize(1920, 1080), 60),
        };
        var store = new MapStore(Path.Combine(_work.Data, "maps"), TimeProvider.System);
        store.Save(saved);
        store.Save(saved with { Map = saved.Map with { Stretch = new LaneStretch(Feet.FromFeet(10), Feet.FromFeet(50), default, default) } });

        Assert.Matches(@"2 +near +HDMI-1 at 1920 x 1080, 60 Hz +10 to 50 ", _work.Run("calibrate", "list").Out);
        Assert.Contains("station-2.near.0001.json", _work.Run("calibrate", "undo", "--station", "2", "--projector", "near").Out, StringComparison.Ordinal);
        var listed = Assert.Single(_work.Run("calibrate", "list", "--json").Json().GetProperty("maps").EnumerateArray());
        Assert.True(listed.GetProperty("ok").GetBoolean());
        Assert.Equal(("near", "HDMI-1"), (listed.GetProperty("projector").GetString(), listed.GetProperty("monitor").GetProperty("name").GetString()));
        Assert.EndsWith("0001.json", listed.GetProperty("file").GetString(), StringComparison.Ordinal);
    }

    private string Marks()
    {
        (double Board, double Feet)[] places = [(0.5, 0), (39.5, 0), (39.5, 60), (0.5, 60), (10, 13.5), (30, 41.5)];
        var marks = places.Select(Lit);
        return _work.File("good-marks.json", $"{{ \"marks\": [{string.Join(",\n", marks)}] }}");
    }

    /// <summary>A map made up for this test: a projector behind the bowler, the far end small and high in the picture.</summary>
    private static double[][] Known() => [[-17.0288, 3.8353, 1310.2], [-0.1022, -0.6865, 1040], [-0.0000636, 0.0039866, 1]];

    private static (double X, double Y) At(double board, double feet)
    {
        var (across, down) = ((board - 0.5) * 41.5 / 39, feet * 12);
        var rows = Known().Select(row => (row[0] * across) + (row[1] * down) + row[2]).ToList();
        return (rows[0] / rows[2], rows[1] / rows[2]);
    }

    private static string Lit((double Board, double Feet) place)
    {
        var (x, y) = At(place.Board, place.Feet);
        return string.Create(CultureInfo.InvariantCulture, $$"""{ "boardFromRight": {{place.Board}}, "feet": {{place.Feet}}, "x": {{x:R}}, "y": {{y:R}} }""");
    }

    private static string Mark(string numbers)
    {
        var parts = numbers.Split(", ");
        return $$"""{ "boardFromRight": {{parts[0]}}, "feet": {{parts[1]}}, "x": {{parts[2]}}, "y": {{parts[3]}} }""";
    }
}
