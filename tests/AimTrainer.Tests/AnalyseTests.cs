using System.Globalization;
using System.Text.Json;

namespace AimTrainer.Tests;

public sealed class AnalyseTests : IDisposable
{
    // Source: statistics.md section 1 of the project's reference, "Ten shots": T = 10.
    private const string TenShots = "arrowsBoard\n10.4\n9.2\n11.1\n10.8\n9.7\n12\n10.1\n8.9\n11.5\n10.3\n";

    private const string Line = """
        time,bowler,ball,laydownBoard,arrowsBoard,boardAt42,speedMph,speedAt,revsRpm
        2026-03-01T18:00:00Z,Ann,one,20.1,15.2,7.5,17.1,release,301
        2026-03-01T18:01:00Z,Ann,one,19.4,14.9,6.4,16.8,release,290
        2026-03-01T18:02:00Z,Ann,two,20.6,15.8,9.1,17.4,release,310
        2026-03-01T18:03:00Z,Ann,two,19.9,14.2,4.6,16.9,release,305
        2026-03-01T18:04:00Z,Ann,two,,15.1,7.0,17.0,release,296
        2026-03-02T18:05:00Z,Ann,one,20.2,15.0,,17.2,release,300
        """;

    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Json_TenShots_FiguresOfTheWorkedExample()
    {
        var analysis = Analyse(TenShots, "--target", "10@15x3");

        var target = analysis.GetProperty("accuracy").GetProperty("perTarget")[0];
        // Source: statistics.md section 1 (SciPy 1.10.1), four digits; width.data for s and E, 1e-7.
        Assert.Equal(0.4, Value(target, "constantErrorBoards"), 1e-12);
        Assert.Equal(-0.3033, Low(target, "constantErrorBoards"), 5e-5);
        Assert.Equal(1.1033, High(target, "constantErrorBoards"), 5e-5);
        Assert.Equal(0.9831920802501752, Value(target, "standardDeviationBoards"), 1e-7);
        Assert.Equal(0.6763, Low(target, "standardDeviationBoards"), 5e-5);
        Assert.Equal(1.7949, High(target, "standardDeviationBoards"), 5e-5);
        Assert.Equal(1.0148891565092222, Value(target, "totalErrorBoards"), 1e-7);
        Assert.Equal(0.84, Value(target, "absoluteErrorBoards"), 1e-12);
        // Nine of ten within 1.5 boards; Wilson by hand as in ReplayTests.
        Assert.Equal(0.59585, target.GetProperty("hitRate").GetProperty("wilsonLow").GetDouble(), 5e-6);
        Assert.Equal(3.1, target.GetProperty("tenShotSpread").GetProperty("latestBoards").GetDouble());
        Assert.Equal("averages of 180 and more: 4 boards", target.GetProperty("tenShotSpread").GetProperty("reference").GetProperty("words").GetString());
        Assert.NotEmpty(target.GetProperty("tenShotSpread").GetProperty("caveats").EnumerateArray());
        Assert.Equal(JsonValueKind.Null, analysis.GetProperty("accuracy").GetProperty("line").ValueKind);
    }

    [Fact]
    public void Json_FourteenShots_SharesOfAnotherProgram()
    {
        // Source: attrib.14: readings at 15 and 35 ft, noise 0.1 board; SciPy 1.10.1, tolerance 1e-9. On a lane that is straight so far.
        double[] near = [14.3, 13.6, 14, 12, 15.3, 14.4, 14.2, 14.6, 14.3, 13.8, 14.2, 14.1, 14.7, 12.7];
        double[] far = [6.6, 5.5, 6.3, 3.7, 7.4, 5.9, 6.7, 6.7, 6.5, 6, 5.6, 6.6, 7.9, 3.7];
        var csv = "boardAt15,boardAt35\n" + string.Join('\n', near.Zip(far, (a, b) => string.Create(CultureInfo.InvariantCulture, $"{a},{b}")));
        var lane = _work.File("lane.json", """{"format":1,"name":"straight","widthInches":41.5,"arrowsFeet":15,"straightFeet":35,"markers":[]}""");

        var causes = Analyse(csv, "--target", "14@15", "--target", "6@35", "--lane", lane, "--noise", "0.1").GetProperty("causes");

        var last = causes.GetProperty("targets")[1];
        Assert.Equal(0.36047699841900255, Value(last.GetProperty("shares"), "laydownShare"), 1e-9);
        Assert.Equal(0.6395230015809974, Value(last.GetProperty("shares"), "angleShare"), 1e-9);
        Assert.Equal(-0.0018749999999991183, last.GetProperty("shares").GetProperty("twiceLaydownAngle").GetDouble(), 1e-9);
        Assert.Equal(0.36832550192225516, Value(last.GetProperty("sharesWithoutNoise"), "laydownShare"), 1e-9);
        Assert.Equal(0.6316744980777448, Value(last.GetProperty("sharesWithoutNoise"), "angleShare"), 1e-9);
        Assert.Equal(0.0359712230215658, Value(causes.GetProperty("aimDistance"), "feet"), 1e-9);
        Assert.Equal(-1.760925449871483, Value(causes.GetProperty("aimDistanceWithoutNoise"), "feet"), 1e-9);
    }

    [Fact]
    public void Json_EveryShot_PartsAddUpAndAreSaid()
    {
        var splits = Analyse(Line, "--target", "15@15x3", "--target", "7@42x3").GetProperty("splits").EnumerateArray().ToList();

        Assert.Equal([2, 3, 4, 5, 6, 7], splits.Select(split => split.GetProperty("line").GetInt32()));
        foreach (var target in splits.Take(4).SelectMany(split => split.GetProperty("targets").EnumerateArray()).Select(target => target.GetProperty("split")))
        {
            var parts = new[] { "laydownBoards", "angleBoards", "beyondBoards" }.Sum(part => target.GetProperty(part).GetDouble());
            Assert.Equal(target.GetProperty("missBoards").GetDouble(), parts, 1e-9);
        }

        // By hand: plan from 19.444 at 15 and 7; the third shot was laid down at 20.6, went 0.32 a foot, straight on to 7.16, and is seen at 9.1.
        Assert.Equal(
            "2.1 boards inside downlane: laid down 1.2 boards inside, angle 0.1 degrees too open; ball read early by 1.9 boards",
            splits[2].GetProperty("targets")[1].GetProperty("sentence").GetString());
        Assert.Equal(
            "only board 15.1 at 15 ft is known; needed is a second place at least 5 ft from it, up to 20 ft, or the launch angle",
            splits[4].GetProperty("why").GetString());
        Assert.Equal("nobody measured the crossing", splits[5].GetProperty("targets")[1].GetProperty("split").GetProperty("why").GetString());
    }

    [Fact]
    public void Json_EveryKey_IsInTheDocs()
    {
        var docs = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "analysis.md"));
        var csv = Line + "\n" + string.Join('\n', Enumerable.Range(6, 20).Select(i => string.Create(
            CultureInfo.InvariantCulture,
            $"2026-03-02T18:{i:00}:00Z,Ann,one,{20 + (i % 3 * 0.3)},{15 + (i % 4 * 0.2)},{(i == 9 ? 20 : 8 + (i % 5 * 0.3))},{17 + (i % 7 * 0.1)},release,{300 + (i % 6)}")));
        var analysis = Analyse(csv, "--target", "15@15x3", "--target", "7@42x3", "--noise", "0.05");

        Assert.NotEqual(JsonValueKind.Null, analysis.GetProperty("causesWithoutGrossMisses").ValueKind);
        var keys = Keys(analysis).Distinct().ToList();
        Assert.True(keys.Count > 100);
        Assert.All(keys, key => Assert.True(docs.Contains($"`{key}`", StringComparison.Ordinal) || docs.Contains($"\"{key}\"", StringComparison.Ordinal), key));
    }

    [Fact]
    public void Json_Groups_AreThoseOfTheFile()
    {
        var accuracy = Analyse(Line, "--target", "15@15x3", "--target", "7@42x3").GetProperty("accuracy");

        var groups = accuracy.GetProperty("groups").EnumerateArray()
            .Select(group => $"{group.GetProperty("by").GetString()}: {group.GetProperty("name").GetString()} {group.GetProperty("shots").GetInt32()}");
        Assert.Equal(
            [
                "session: 2026-03-01 5", "session: 2026-03-02 1", "ball: one 3", "ball: two 3", "line: 15@15 to 7@42 6", "lanePart: inside 6",
                "speedBand: 17 to 18 mph (release) 4", "speedBand: 16 to 17 mph (release) 2", "ten: shots 1 to 10 6",
            ],
            groups);
        Assert.Equal(["drill", "block"], accuracy.GetProperty("groupingsUnknown").EnumerateArray().Select(unknown => unknown.GetProperty("by").GetString()!));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(9)]
    public void Json_FewShots_UnknownIsNullWithTheReason(int count)
    {
        var rows = string.Concat(Enumerable.Range(0, count).Select(i => string.Create(
            CultureInfo.InvariantCulture, $"2026-03-01T18:0{i}:00Z,{20 + (i % 3 * 0.4)},{15 + (i % 2 * 0.5)},{7 + (i % 4 * 0.6)}\n")));
        var csv = "time,laydownBoard,arrowsBoard,boardAt42\n2026-03-01T18:59:00Z,,,8\n" + rows;
        foreach (var hand in new[] { "right", "left" })
        {
            var analysis = Analyse(csv, "--target", "15@15x3", "--target", "7@42x3", "--hand", hand);
            Assert.Equal(hand, analysis.GetProperty("hand").GetString());
            var first = analysis.GetProperty("accuracy").GetProperty("perTarget")[0];
            Assert.Equal(count, first.GetProperty("measured").GetInt32());
            AssertKnown(count >= 1, first.GetProperty("constantErrorBoards"));
            AssertKnown(count >= 2, first.GetProperty("standardDeviationBoards"));
            Assert.Equal(count >= 8, first.GetProperty("robust").GetProperty("grossMisses").ValueKind == JsonValueKind.Number);
            Assert.Equal(count >= 1, analysis.GetProperty("causes").GetProperty("laydownOffBoards").GetProperty("value").ValueKind == JsonValueKind.Number);
            Assert.Equal(count + 1, analysis.GetProperty("splits").GetArrayLength());
        }

        static void AssertKnown(bool known, JsonElement estimate)
        {
            Assert.Equal(known, estimate.GetProperty("value").ValueKind == JsonValueKind.Number);
            Assert.True(known || estimate.GetProperty("why").GetString()!.Contains(" on", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Json_AllIdentical_HasNoLimits()
    {
        var target = Analyse("arrowsBoard\n" + string.Concat(Enumerable.Repeat("11\n", 12)), "--target", "10@15x3").GetProperty("accuracy").GetProperty("perTarget")[0];
        Assert.Equal(JsonValueKind.Null, target.GetProperty("constantErrorBoards").GetProperty("low").ValueKind);
        Assert.Equal(0, Value(target, "standardDeviationBoards"));
        Assert.Contains("all readings are the same", target.GetProperty("standardDeviationBoards").GetProperty("why").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Json_TargetWithoutAWidth_HasNoHitRate()
    {
        var rate = Analyse(TenShots, "--target", "10@15").GetProperty("accuracy").GetProperty("perTarget")[0].GetProperty("hitRate");
        Assert.Equal(JsonValueKind.Null, rate.GetProperty("rate").ValueKind);
        Assert.Equal("the target has no width, so it cannot be held", rate.GetProperty("why").GetString());
    }

    [Fact]
    public void Json_OthersRepeatedAndUnreadable_AreCountedAndSaid()
    {
        const string Csv = """
            id,bowler,arrowsBoard
            a,Ann,10
            a,Ann,10
            b,Ben,11
            c,Ann,99
            d,Ann,11
            """;
        var ran = _work.Run("analyse", "--shots", _work.File("s.csv", Csv), "--target", "10@15x3", "--json");

        Assert.Equal(0, ran.Code);
        var counts = new[] { "shots", "repeatedShots", "shotsOfOthers", "unreadableRows" }.Select(key => ran.Json().GetProperty(key).GetInt32());
        Assert.Equal([2, 1, 1, 1], counts);
        Assert.Contains("s.csv:5: arrowsBoard: found 99", ran.Error, StringComparison.Ordinal);
        Assert.Contains("1 shot not of Ann left out", ran.Error, StringComparison.Ordinal);
        Assert.Equal(1, Analyse(Csv, "--target", "10@15x3", "--bowler", "ben").GetProperty("shots").GetInt32());
    }

    [Fact]
    public void Text_ALine_SaysFiguresCausesAndMisses()
    {
        var ran = _work.Run("analyse", "--shots", _work.File("line.csv", Line), "--target", "15@15x3", "--target", "7@42x3", "--left-right");

        Assert.Equal(0, ran.Code);
        Assert.Contains("line.csv: 6 shots of Ann, right hand.", ran.Out, StringComparison.Ordinal);
        Assert.Contains("The line as a whole: held 60 % (23 to 88)", ran.Out, StringComparison.Ordinal);
        Assert.Contains("By ball", ran.Out, StringComparison.Ordinal);
        Assert.Contains("How the ball left is known of 5 of 6 shots. It is taken to run straight up to 20 ft; nothing beyond is read as angle.", ran.Out, StringComparison.Ordinal);
        Assert.Contains("1 shot without: one place in the straight part and no launch angle.", ran.Out, StringComparison.Ordinal);
        Assert.Contains("laydown with angle, twice the covariance", ran.Out, StringComparison.Ordinal);
        Assert.Contains(
            "  shot 3 (line 4): 2.1 boards left downlane: laid down 1.2 boards left, angle 0.1 degrees too far right; ball read early by 1.9 boards",
            ran.Out,
            StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_LeftHander_SeesTheOtherSides()
    {
        var ran = _work.Run("analyse", "--shots", _work.File("line.csv", Line), "--target", "15@15x3", "--target", "7@42x3", "--left-right", "--hand", "left");
        Assert.Contains("2.1 boards right downlane: laid down 1.2 boards right, angle 0.1 degrees too far left", ran.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("10")]
    [InlineData("10@")]
    [InlineData("40@15")]
    [InlineData("10@61")]
    [InlineData("10@15x0.4")]
    [InlineData("10@15x21")]
    [InlineData("10@15x3x3")]
    [InlineData("ten@15")]
    [InlineData("10,5@15")]
    public void Target_NotOne_IsRefusedInWords(string target)
    {
        var ran = _work.Run("analyse", "--shots", _work.File("s.csv", TenShots), "--target", target);
        Assert.Equal(2, ran.Code);
        Assert.StartsWith($"--target: found {target}; allowed: a board from 0.5 to 39.5, @, feet from 0 to 60", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Target_TwoAtOneDistance_IsRefusedInWords()
    {
        var ran = _work.Run("analyse", "--shots", _work.File("s.csv", TenShots), "--target", "10@15", "--target", "12@15");
        Assert.Equal(2, ran.Code);
        Assert.StartsWith("--target: found 2 targets at 15 ft; allowed: one at each distance", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("arrowsBoard\n", "no shot in it could be read")]
    [InlineData("arrowsBoard\nx\n", "no shot in it could be read, see above")]
    public void Shots_NoneReadable_IsBadInput(string csv, string words)
    {
        var ran = _work.Run("analyse", "--shots", _work.File("s.csv", csv), "--target", "10@15");
        Assert.Equal(2, ran.Code);
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
        Assert.Empty(ran.Out);
    }

    [Fact]
    public void Shots_NoSuchFile_IsBadInput()
    {
        var ran = _work.Run("analyse", "--shots", Path.Combine(_work.Folder, "none.csv"), "--target", "10@15");
        Assert.Equal((2, true), (ran.Code, ran.Error.Contains("none.csv: no such file", StringComparison.Ordinal)));
    }

    private static double Value(JsonElement of, string name) => of.GetProperty(name).GetProperty("value").GetDouble();

    private static double Low(JsonElement of, string name) => of.GetProperty(name).GetProperty("low").GetDouble();

    private static double High(JsonElement of, string name) => of.GetProperty(name).GetProperty("high").GetDouble();

    private static IEnumerable<string> Keys(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(member => Keys(member.Value).Prepend(member.Name)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Keys),
        _ => [],
    };

    private JsonElement Analyse(string csv, params string[] args)
    {
        var ran = _work.Run(["analyse", "--shots", _work.File("shots.csv", csv), .. args, "--json"]);
        Assert.True(ran.Code == 0, ran.Error);
        return ran.Json();
    }
}
