using System.Text.Json;

namespace AimTrainer.Tests;

public sealed class PathTests : IDisposable
{
    private const string House = """
        {
          "mu_dry": 0.2, "mu_oil": 0.04, "u0": 1, "mode": "step", "wear": { "taken_share": 0.05 },
          "rows": [ { "x_ft": 0, "oil": [OIL] }, { "x_ft": 39.3700787402, "oil": [DRY] } ]
        }
        """;

    private const string Release = """
        { "hand": "right", "laydownBoard": 25, "launchAngleDeg": 3.5, "speedMps": 8, "revsRpm": 416, "axisRotationDeg": 45, "axisTiltDeg": 0 }
        """;

    private const string Ball = """{ "massKg": 6.80388555, "radiusM": 0.108585, "radiusOfGyrationIn": 2.5 }""";

    private readonly Workplace _work = new();

    private static string Lane { get; } = House
        .Replace("OIL", string.Join(", ", Enumerable.Repeat("1e9", 39)), StringComparison.Ordinal)
        .Replace("DRY", string.Join(", ", Enumerable.Repeat("0", 39)), StringComparison.Ordinal);

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Path_Json_HasTheDocumentedShapeAndTheNumbersOfTheCase()
    {
        var json = Run(Release, Lane, Ball, "--json").Json();

        // Source: path-cases.json, case 09_twozone_step.
        Near(16.0758631336, json, "arrowsBoard");
        Near(7.85355403789, json, "breakpointBoard");
        Near(41.4308595558, json, "breakpointFeet");
        Near(15.1256236513 / 0.3048, json, "rollFeet");
        Near(18.0992412284, json, "boardAt60");
        Near(3.63059637095, json, "angleAt60Deg");
        Near(2.44499892486, json, "timeS");
        Near(2.53486907021, json, "speedLossMph");
        Near(17.7296446276, json.GetProperty("contact"), "board");
        Near(3.63059637095, json.GetProperty("contact"), "angleDeg");
        Assert.Equal("pins", json.GetProperty("end").GetString());
        var path = json.GetProperty("path").EnumerateArray().ToList();
        Assert.Equal([.. Enumerable.Range(0, 61)], path.Select(point => point.GetProperty("feet").GetInt32()));
        Near(7.9325445236, path[40], "board");
        Near(1.5740601955, path[40], "timeS");
        Near(243.756985938, json, "energyAtLaydownJ");
        Near(215.270827758, json, "energyAtEndJ");
    }

    [Fact]
    public void Path_JsonOfAGutterBall_SaysWhereAndLeavesTheRestUnknown()
    {
        var json = Run(Release.Replace("25", "2", StringComparison.Ordinal), Lane, Ball, "--json").Json();

        Assert.Equal("gutter", json.GetProperty("end").GetString());
        Assert.InRange(json.GetProperty("endFeet").GetDouble(), 1, 10);
        Assert.All(
            ["arrowsBoard", "breakpointBoard", "rollFeet", "boardAt60", "angleAt60Deg", "contact"],
            key => Assert.Equal(JsonValueKind.Null, json.GetProperty(key).ValueKind));
    }

    [Fact]
    public void Path_Text_ShowsTheLaneAndTheFigures()
    {
        var ran = Run(Release, Lane, null);

        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Contains("   40 ft |                               O       |  board   7.9  1.57 s", ran.Out, StringComparison.Ordinal);
        Assert.Contains("   35 ft |##############################O########|  board   8.8", ran.Out, StringComparison.Ordinal);
        Assert.Contains("at 60 ft       board 18.1", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Nobody walks past the foul line", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Path_TextForALeftHander_IsTheMirror()
    {
        var rows = Run(Release, Lane, Ball).Out.Split('\n').Where(line => line.Contains(" ft |", StringComparison.Ordinal)).Select(Strip);
        var mirrored = Run(Release.Replace("right", "left", StringComparison.Ordinal), Lane, Ball).Out.Split('\n')
            .Where(line => line.Contains(" ft |", StringComparison.Ordinal)).Select(Strip);

        Assert.Equal(rows.Select(row => new string([.. row.Reverse()])), mirrored);
    }

    [Fact]
    public void Path_WornLane_HooksEarlierWhereTheShotsWent()
    {
        var lane = Lane.Replace("1e9", "20", StringComparison.Ordinal).Replace("\"u0\": 1,", "\"u0\": 6,", StringComparison.Ordinal);
        var fresh = Run(Release, lane, Ball, "--json").Json().GetProperty("boardAt60").GetDouble();
        var worn = Run(Release, lane, Ball, "--json", "--worn", "20").Json().GetProperty("boardAt60").GetDouble();

        Assert.InRange(worn - fresh, 0.5, 15);
    }

    [Fact]
    public void Path_WornWithoutWear_SaysWhatToDo()
    {
        var ran = Run(Release, Lane.Replace("\"wear\": { \"taken_share\": 0.05 },", "", StringComparison.Ordinal), Ball, "--worn", "2");
        Assert.Equal(2, ran.Code);
        Assert.Contains("\"wear\": { \"taken_share\"", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("416", "NaN", "1")]
    [InlineData("416", "-1", "$.revsRpm: found -1; allowed: a number, 0 to 1000")]
    [InlineData("416", "5000", "$.revsRpm: found 5000; allowed: a number, 0 to 1000")]
    [InlineData("25,", "41,", "$.laydownBoard: found 41; allowed: a number, 0.5 to 39.5")]
    [InlineData("\"revsRpm\": 416,", "", "$: found no \"revsRpm\"; allowed: a number, 0 to 1000")]
    [InlineData("\"speedMps\": 8", "\"speedMps\": 8, \"speedMph\": 18", "\"speedMph\" beside \"speedMps\"")]
    [InlineData("\"axisRotationDeg\": 45", "\"axisRotationDeg\": 91", "$.axisRotationDeg: found 91; allowed: a number, -90 to 90")]
    [InlineData("right", "both", "$.hand: found \"both\"; allowed: \"right\", \"left\"")]
    [InlineData("laydownBoard", "laidownBoard", "laydownBoard (the most alike)")]
    public void Path_BadRelease_IsRefusedWithPlaceAndRange(string good, string bad, string message)
    {
        var ran = Run(Release.Replace(good, bad, StringComparison.Ordinal), Lane, Ball, "--json");

        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains("release.json:1", ran.Error, StringComparison.Ordinal);
        Assert.Contains(message, ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("39.3700787402", "0", "$.rows[1].x_ft: found 0; allowed: rows in rising order of distance: more than 0")]
    [InlineData("\"mu_dry\": 0.2", "\"mu_dry\": 2", "$.mu_dry: found 2; allowed: a number, 0 to 0.6")]
    [InlineData("\"u0\": 1", "\"u0\": 0", "$.u0: found 0; allowed: a number, 0.01 to 1000")]
    [InlineData("\"mode\": \"step\"", "\"mode\": \"steps\"", "allowed: \"linear\", \"step\"")]
    public void Path_BadLane_IsRefusedWithPlaceAndRange(string good, string bad, string message)
    {
        var ran = Run(Release, Lane.Replace(good, bad, StringComparison.Ordinal), Ball);

        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains(message, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Path_NoSuchFile_SaysSo()
    {
        var ran = _work.Run("path", "--release", "nowhere.json", "--lane", "nowhere.json");
        Assert.Equal((2, "nowhere.json: no such file\n"), (ran.Code, ran.Error));
    }

    private static string Strip(string line) => line[(line.IndexOf('|', StringComparison.Ordinal) + 1)..line.LastIndexOf('|')];

    private static void Near(double expected, JsonElement json, string key) => Assert.Equal(expected, json.GetProperty(key).GetDouble(), 2e-9);

    private Ran Run(string release, string lane, string? ball, params string[] more) => _work.Run(
    [
        "path", "--release", _work.File("release.json", release), "--lane", _work.File("lane.json", lane),
        .. ball is null ? (string[])[] : ["--ball", _work.File("ball.json", ball)], .. more,
    ]);
}
