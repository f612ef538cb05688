using System.Text.Json;

namespace AimTrainer.Tests;

public sealed class AimTests : IDisposable
{
    private const string Lane = """
        { "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "passes": [ { "from_board": 2, "to_board": 38, "start_ft": 0, "end_ft": 40, "units": 6 },
          { "from_board": 10, "to_board": 30, "start_ft": 0, "end_ft": 34, "units": 40, "end_units": 15 } ] }
        """;

    private const string Bowler = """
        { "hand": "right", "speedMph": 17.9, "revsRpm": 350, "axisRotationDeg": 45, "axisTiltDeg": 12,
          "spread": { "laydownBoards": 0.5, "launchAngleDeg": 0.2, "speedMph": 0.3, "revsRpm": 10 } }
        """;

    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Aim_JsonAndDrill_AgreeAndTheDrillIsOne()
    {
        var drill = Path.Combine(_work.Folder, "my-line.json");
        var json = Run(Bowler, "--pocket-angle", "2,6", "--write-drill", drill, "--json").Json();

        Assert.Equal(27 * 29, json.GetProperty("map").GetArrayLength());
        Assert.True(json.GetProperty("reachesWindow").GetBoolean());
        Assert.InRange(json.GetProperty("best").GetProperty("chance").GetDouble(), 0.05, 0.99);
        Assert.Equal(["laydown", "launchAngle", "speed", "revs"], json.GetProperty("halving").EnumerateArray().Select(one => one.GetProperty("spread").GetString()));
        Assert.False(json.GetProperty("laneFitted").GetBoolean());
        Assert.Equal(0, _work.Run("drill", "check", drill).Code);
        Assert.Equal("my-line", JsonDocument.Parse(File.ReadAllText(drill)).RootElement.GetProperty("id").GetString());
    }

    [Fact]
    public void Aim_LinesLimited_TriesOnlyThose()
    {
        var json = Run(Bowler, "--pocket-angle", "2,6", "--laydowns", "18,26,2", "--angles", "-0.5,3,0.5", "--json").Json();

        Assert.Equal(5 * 8, json.GetProperty("map").GetArrayLength());
        Assert.Equal((18, -0.5), (json.GetProperty("map")[0].GetProperty("laydownBoard").GetDouble(), json.GetProperty("map")[0].GetProperty("launchAngleDeg").GetDouble()));
        Assert.InRange(json.GetProperty("best").GetProperty("laydownBoard").GetDouble(), 18, 26);
    }

    [Fact]
    public void Aim_Text_SaysTheLineTheChanceAndWhatItIsNot()
    {
        var ran = Run(Bowler, "--pocket-angle", "2,6");
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Contains("Best line: board ", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Halving a spread would add", ran.Out, StringComparison.Ordinal);
        Assert.Contains("the lane file was taken as exact", ran.Out, StringComparison.Ordinal);
        Assert.Contains("not a strike", ran.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--pocket-boards", "18,17", "--pocket-boards: found 18,17; allowed: two numbers that rise")]
    [InlineData("--pocket-at", "here", "--pocket-at: found here; allowed: contact, 60")]
    [InlineData("--fit", "nowhere.json", "nowhere.json: no such file")]
    [InlineData("--axis-rotation", "45", "a bowler file has its own")]
    [InlineData("--laydowns", "8,34", "--laydowns: found 8,34; allowed: three numbers, first, last and step, as 8,34,1")]
    [InlineData("--laydowns", "8,44,1", "--laydowns, --angles: laydowns 8 to 44 by 1; allowed: 0.5 to 39.5 by 0.1 to 10")]
    [InlineData("--angles", "-1,6,0.02", "angles -1 to 6 by 0.02; allowed: -10 to 10 by 0.05 to 5")]
    [InlineData("--laydowns", "1,39,0.1", "lines; allowed: 4000; take longer steps")]
    public void Aim_BadOption_IsRefused(string option, string value, string message) => Refused(Run(Bowler, option, value), message);

    [Theory]
    [InlineData("\"laydownBoards\": 0.5", "\"laydownBoards\": -1", "$.spread.laydownBoards: found -1; allowed: a number, 0 to 10")]
    [InlineData("\"speedMph\": 17.9", "\"speedMph\": 99", "$.speedMph: found 99; allowed: a number, 4.5 to 35.5")]
    [InlineData("\"hand\": \"right\"", "\"hand\": \"right\", \"correlations\": [[1,1,0,0],[1,1,0,0],[0,0,1,0],[0,0,0,1]]", "correlations that no scatter can have")]
    public void Aim_BadBowlerFile_IsRefusedWithItsPlace(string good, string bad, string message) => Refused(Run(Bowler.Replace(good, bad, StringComparison.Ordinal)), message);

    [Fact]
    public void Aim_BowlerOfTheRecord_IsReadFromSimulatedShotsAndSaysSo()
    {
        Assert.Equal(0, _work.Run("demo", "--seed", "3").Code);
        Assert.Equal(0, _work.Run("demo", "--seed", "4").Code);
        var name = _work.Run("sessions", "list", "--json").Json().EnumerateArray().First().GetProperty("bowler").GetString()!;
        var lane = _work.File("lane.json", Lane);

        Refused(_work.Run("aim", "--bowler", name, "--lane", lane), "no axis rotation; give it with --axis-rotation");
        var ran = _work.Run("aim", "--bowler", name, "--lane", lane, "--axis-rotation", "45");
        Assert.Contains("all simulated: invented", ran.Out, StringComparison.Ordinal);
        Refused(_work.Run("aim", "--bowler", "Nobody", "--lane", lane), "no session of this bowler");
    }

    private static void Refused(Ran ran, string message)
    {
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains(message, ran.Error, StringComparison.Ordinal);
    }

    private Ran Run(string bowler, params string[] more) =>
        _work.Run(["aim", "--bowler", _work.File("bowler.json", bowler), "--lane", _work.File("lane.json", Lane), .. more]);
}
