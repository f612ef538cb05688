using System.Globalization;
using System.Text;
using AimTrainer.Motion;

namespace AimTrainer.Tests;

public sealed class FitLaneTests : IDisposable
{
    private const string Heading = "hand,laydownBoard,arrowsBoard,boardAt40,boardAt50,entryBoard,speedMph,speedAt,revsRpm,axisRotationDeg,axisTiltDeg\n";

    private const string Lane = """
        { "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6, "passes": [ { "from_board": 1, "to_board": 39, "start_ft": 0, "end_ft": 40, "units": 20 } ] }
        """;

    private const string Usual = """
        { "hand": "right", "speedMph": 17.9, "revsRpm": 350, "axisRotationDeg": 45, "axisTiltDeg": 0,
          "spread": { "laydownBoards": 0.5, "launchAngleDeg": 0.2, "speedMph": 0.3, "revsRpm": 10 } }
        """;

    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void FitLane_Json_FindsTheLaneAndHasTheDocumentedShape()
    {
        var json = Run(Shots(","), "--json").Json();

        Assert.InRange(json.GetProperty("oilFriction").GetDouble(), 0.0395, 0.0405);
        Assert.InRange(json.GetProperty("dryFriction").GetDouble(), 0.175, 0.185);
        Assert.InRange(json.GetProperty("patternFeet").GetDouble(), 37.8, 38.2);
        Assert.True(json.GetProperty("tells").GetBoolean());
        Assert.Equal(["oilFriction", "dryFriction", "patternFeet"], json.GetProperty("parameters").EnumerateArray().Select(one => one.GetProperty("parameter").GetString()));
        Assert.Equal((8, 0), (json.GetProperty("shots").GetInt32(), json.GetProperty("leftOut").GetArrayLength()));
        Assert.Equal([3, 3, 3], json.GetProperty("covariance").EnumerateArray().Select(row => row.GetArrayLength()));
    }

    [Fact]
    public void FitLane_Text_SaysLimitsAndCaution()
    {
        var ran = Run(Shots(","));
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Contains("8 shots fitted.", ran.Out, StringComparison.Ordinal);
        Assert.Contains("95 % limits 0.0", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Nobody walks past the foul line", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void FitLane_RevsNotMeasured_NeedsAndTellsOfTheUsualThrow()
    {
        var without = Run(Shots(",", revs: ""));
        Assert.Equal(2, without.Code);
        Assert.Contains("revs not measured; give the bowler's usual throw with --usual", without.Error, StringComparison.Ordinal);

        var with = Run(Shots(",", revs: ""), "--usual", _work.File("usual.json", Usual));
        Assert.Contains("revs not measured in 8 shots: the usual one taken", with.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--noise", "0", "--noise: found 0")]
    [InlineData("--keep", "wet", "--keep: found wet; allowed: oil, dry, pattern")]
    [InlineData("--usual", "nowhere.json", "nowhere.json: no such file")]
    public void FitLane_BadOption_IsRefused(string option, string value, string message)
    {
        var ran = Run(Shots(","), option, value);
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains(message, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void FitLane_NoShotWithThreeCrossings_SaysWhatIsNeeded()
    {
        var ran = Run("laydownBoard,arrowsBoard,speedMph,speedAt,revsRpm,axisRotationDeg,axisTiltDeg\n20,15,17,release,300,45,10\n");
        Assert.Equal(2, ran.Code);
        Assert.Contains("line 2: 2 crossings; allowed: 3 or more", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Aim_FitOfThisLane_TellsARange()
    {
        var fit = _work.File("fit.json", Run(Shots(","), "--noise", "0.25", "--json").Out);
        var json = _work.Run(
            "aim", "--bowler", _work.File("bowler.json", Usual), "--lane", _work.File("lane.json", Lane), "--fit", fit, "--pocket-angle", "1,8", "--json").Json();

        Assert.True(json.GetProperty("laneFitted").GetBoolean());
        var best = json.GetProperty("best");
        Assert.InRange(best.GetProperty("chance").GetDouble(), best.GetProperty("lowChance").GetDouble(), best.GetProperty("highChance").GetDouble());
    }

    private static string Shots(string comma, string? revs = null)
    {
        var sheet = LaneSurfaceReader.Read("lane.json", Encoding.UTF8.GetBytes(Lane)).Value!.Surface;
        var lane = new LaneNumbers(0.04, 0.18, 38).On(sheet);
        var text = new StringBuilder(Heading);
        for (var i = 0; i < 8; i++)
        {
            var release = new Release(Domain.Hand.Right, 18 + i, 1.5 + (0.25 * (i % 4)), 7.5 + (0.1 * i), 300 + (15 * i));
            var path = Paths.Trace(lane, Ball.Usual, release);
            string[] cells =
            [
                "right", .. new[] { 0.0, 15, 40, 50, 60 }.Select(feet => path.At(feet).Board.ToString("0.00", CultureInfo.InvariantCulture)),
                release.SpeedMph.ToString("0.0000", CultureInfo.InvariantCulture), "release", revs ?? release.RevsRpm.ToString(CultureInfo.InvariantCulture), "45", "0",
            ];
            text.Append(string.Join(comma, cells)).Append('\n');
        }

        return text.ToString();
    }

    private Ran Run(string shots, params string[] more) =>
        _work.Run(["fit-lane", "--shots", _work.File("shots.csv", shots), "--lane", _work.File("lane.json", Lane), .. more]);
}
