using System.Text.Json;

namespace AimTrainer.Tests;

public sealed class ReplayTests : IDisposable
{
    // Source: statistics.md section 1 of the project's reference, "Ten shots": T = 10.
    private const string TenShots = "arrowsBoard\n10.4\n9.2\n11.1\n10.8\n9.7\n12\n10.1\n8.9\n11.5\n10.3\n";

    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Json_TenShots_FiguresOfTheWorkedExample()
    {
        var replay = Replay("ten-shot-spread", TenShots);

        var figures = replay.GetProperty("blocks")[0].GetProperty("summary").GetProperty("perTarget")[0];
        // Source: statistics.md section 1: CE 0.4000, AE 0.8400, VE 0.932738, E 1.014889.
        Assert.Equal(0.4, figures.GetProperty("constantErrorBoards").GetDouble(), 1e-12);
        Assert.Equal(0.84, figures.GetProperty("absoluteErrorBoards").GetDouble(), 1e-12);
        Assert.Equal(0.932738, figures.GetProperty("variableErrorBoards").GetDouble(), 5e-7);
        Assert.Equal(1.014889, figures.GetProperty("totalErrorBoards").GetDouble(), 5e-7);
        Assert.Equal("0.4", figures.GetProperty("constantErrorBoards").GetRawText());
        Assert.Equal((10, 10, 9), (Int(figures, "shots"), Int(figures, "graded"), Int(figures, "hits")));
        Assert.Equal(3.1, figures.GetProperty("spreadBoards").GetDouble(), 1e-12);
        Assert.Equal((8.9, 12.0), (figures.GetProperty("minBoard").GetDouble(), figures.GetProperty("maxBoard").GetDouble()));
        // Wilson for 9 of 10. Source: Wilson 1927; (p + z²/2n ± z sqrt(p(1-p)/n + z²/4n²)) / (1 + z²/n) by hand with z = 1.959964.
        Assert.Equal(0.59585, figures.GetProperty("hitRateLow").GetDouble(), 5e-6);
        Assert.Equal(0.98212, figures.GetProperty("hitRateHigh").GetDouble(), 5e-6);
        // By hand, 3 boards wide: centre up to 0.75, hit up to 1.5, close up to 2.5. 0.4 c, 0.8 h, 1.1 h, 0.8 h, 0.3 c, 2 close, 0.1 c, 1.1 h, 1.5 h, 0.3 c.
        Assert.Equal(
            ["centre", "hit", "hit", "hit", "centre", "close", "centre", "hit", "hit", "centre"],
            Targets(replay).Select(target => target.GetProperty("grade").GetString()!));
        Assert.Equal((4 * 3) + (5 * 2) + 1, Int(replay.GetProperty("blocks")[0].GetProperty("summary"), "points"));
    }

    [Fact]
    public void Json_GrossMissAndUncertainWidth_AreSaidWithTheShotAndOnlyThere()
    {
        // Eight kept misses (median 10.05, median absolute deviation 0.25), a throw 15 boards off, then one that nobody saw.
        var replay = Replay("fitted-target", "arrowsBoard,note\n10.1,\n9.8,\n10.3,\n9.7,\n10,\n10.4,\n9.6,\n10.2,\n25,\n,not seen\n10,\n");

        var shots = Shots(replay);
        Assert.Equal([9], shots.Where(shot => shot.TryGetProperty("leftOutOfWidths", out _)).Select(shot => Int(shot, "number")));
        Assert.True(shots[8].GetProperty("leftOutOfWidths")[0].GetBoolean());
        Assert.Equal(Numbers(shots[7].GetProperty("nextWidthsBoards")), Numbers(shots[8].GetProperty("nextWidthsBoards")));
        Assert.All(shots, shot => Assert.True(shot.GetProperty("nextWidthsUncertain")[0].GetBoolean()));
    }

    [Fact]
    public void Text_ShotOfAnotherBowler_IsNamedWithFileAndLine()
    {
        var ran = _work.Run(["replay", "--drill", "ten-shot-spread", "--shots", _work.File("two.csv", "bowler,arrowsBoard\nAnn,10\nBen,11\n")]);

        Assert.Contains("two.csv:3: found this shot is Ben's", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_BowlerOfAFileOfTwo_HandIsThatBowlers()
    {
        var replay = Replay("ten-shot-spread", "bowler,hand,arrowsBoard\nAnn,right,10\nBen,,11\nBen,left,12\n", "--bowler", "ben");

        Assert.Equal("left", replay.GetProperty("hand").GetString());
        Assert.Equal([11.0, 12.0], Targets(replay).Select(target => target.GetProperty("crossingBoard").GetDouble()));
    }

    [Fact]
    public void Json_BlocksOfMinutes_ImportGradesLikeReplay()
    {
        const string Drill = """
            {"format":1,"id":"by-minutes","name":"By minutes","purpose":"a test","whoFor":"a test","aboutMinutes":3,"blocks":[
            {"name":"two","kind":"training","aims":[{"name":"a","mark":"arrow 2","widthBoards":3}],"order":{"kind":"serial"},"until":{"minutes":2}},
            {"name":"one","kind":"test","aims":[{"name":"a","mark":"arrow 3","widthBoards":3}],"order":{"kind":"serial"},"until":{"minutes":1}}]}
            """;
        const string Csv = "time,arrowsBoard\n2026-03-01T18:00:00Z,10\n2026-03-01T18:01:00Z,11\n2026-03-01T18:02:30Z,15\n2026-03-01T18:05:00Z,15\n";
        var drill = _work.File("by-minutes.json", Drill);
        var shots = _work.File("minutes.csv", Csv);

        var replay = _work.Run(["replay", "--drill", drill, "--shots", shots, "--json"]).Json();
        var import = _work.Run(["shots", "import", shots, "--drill", drill, "--bowler", "Ann", "--json"]).Json();

        // By hand: the third shot comes when two minutes are over, the fourth when both blocks are.
        string[] expected = ["two minutes 2", "one minutes 1"];
        foreach (var record in new[] { replay, import })
        {
            Assert.Equal(expected, record.GetProperty("blocks").EnumerateArray().Select(block =>
                $"{block.GetProperty("name")} {block.GetProperty("ended")} {block.GetProperty("shots").GetArrayLength()}"));
        }
    }

    [Fact]
    public void Text_GrossMiss_IsAskedAbout()
    {
        var ran = _work.Run(["replay", "--drill", "fitted-target", "--shots", _work.File("s.csv", "arrowsBoard\n10.1\n9.8\n10.3\n9.7\n10\n10.4\n9.6\n10.2\n25\n10\n")]);

        Assert.Single(ran.Out.Split('\n'), line => line.TrimEnd() == "     second arrow: a gross miss, left out of the width; misread or real?");
    }

    [Fact]
    public void Json_Shape_HasEveryKeyInOrder()
    {
        var replay = Replay("two-point-line", "arrowsBoard,boardAt40\n15,7\n14,\n");

        var block = replay.GetProperty("blocks")[0];
        var shot = block.GetProperty("shots")[0];
        Assert.Equal(["drill", "hand", "blocks", "complete", "shots", "repeatedShots", "shotsAfterTheEnd"], Keys(replay));
        Assert.Equal(["name", "kind", "shots", "ended", "summary"], Keys(block));
        Assert.Equal(["number", "time", "targets", "held", "comparable", "reasons", "nextWidthsBoards"], Keys(shot));
        Assert.Equal(
            ["name", "distanceFeet", "centreBoard", "widthBoards", "crossing", "crossingBoard", "missBoards", "grade", "points"],
            Keys(shot.GetProperty("targets")[0]));
        Assert.Equal(["perTarget", "points"], Keys(block.GetProperty("summary")));
        Assert.Equal(
            [
                "name", "shots", "graded", "hits", "hitRate", "hitRateLow", "hitRateHigh", "constantErrorBoards", "variableErrorBoards",
                "absoluteErrorBoards", "totalErrorBoards", "spreadBoards", "minBoard", "maxBoard",
            ],
            Keys(block.GetProperty("summary").GetProperty("perTarget")[0]));
    }

    [Fact]
    public void Json_OneShot_AsInTheDocs()
    {
        var docs = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "json.md"));
        var example = docs.Split("```json\n")[1].Split("```")[0];

        var replay = Replay("ten-shot-spread", "arrowsBoard\n10.4\n");

        Assert.Equal(JsonSerializer.Serialize(JsonDocument.Parse(example)), JsonSerializer.Serialize(replay));
    }

    [Fact]
    public void Json_CrossingUnknown_IsNullAndNotCounted()
    {
        var replay = Replay("two-point-line", "arrowsBoard,boardAt40\n15,7\n14,\n");

        var unknown = Targets(replay, shot: 1).Last();
        Assert.Equal("unknown", unknown.GetProperty("crossing").GetString());
        Assert.All(["crossingBoard", "missBoards", "grade", "points"], key => Assert.Equal(JsonValueKind.Null, unknown.GetProperty(key).ValueKind));
        Assert.Equal(JsonValueKind.Null, Shots(replay)[1].GetProperty("held").ValueKind);
        var downlane = replay.GetProperty("blocks")[0].GetProperty("summary").GetProperty("perTarget")[1];
        Assert.Equal((2, 1, 1), (Int(downlane, "shots"), Int(downlane, "graded"), Int(downlane, "hits")));
        Assert.Equal(JsonValueKind.Null, downlane.GetProperty("variableErrorBoards").ValueKind);
        Assert.False(replay.GetProperty("complete").GetBoolean());
    }

    [Fact]
    public void Json_CrossingBetweenTwo_IsInterpolatedAndSaysSo()
    {
        // 14 at 10 ft and 11 at 20 ft, so half way, at 15 ft, 12.5: 2.5 inside of board 10, and a hit is up to 1.5.
        var target = Targets(Replay("ten-shot-spread", "boardAt10,boardAt20\n14,11\n")).Single();

        Assert.Equal("interpolated", target.GetProperty("crossing").GetString());
        Assert.Equal((12.5, 2.5, "close"), (target.GetProperty("crossingBoard").GetDouble(), target.GetProperty("missBoards").GetDouble(), target.GetProperty("grade").GetString()!));
    }

    [Fact]
    public void Json_LeftHand_GradesAlikeAndTextMirrors()
    {
        var right = Replay("ten-shot-spread", TenShots);
        var left = Replay("ten-shot-spread", TenShots, "--hand", "left");

        Assert.Equal(right.GetProperty("blocks").GetRawText(), left.GetProperty("blocks").GetRawText());
        Assert.Equal("left", left.GetProperty("hand").GetString());
        var text = _work.Run("replay", "--drill", "ten-shot-spread", "--shots", Path.Combine(_work.Folder, "s.csv"), "--hand", "left").Out;
        Assert.Contains("board 1 on the left, 39 on the right", text, StringComparison.Ordinal);
        Assert.Contains("  6 |....+...===x..+....+....+....+....+....|  12.00 2.00 right  close  1", text, StringComparison.Ordinal);
    }

    [Theory]
    // A block of its own for each rule; widths after each shot worked by hand. Hit: at the centre; miss: five boards off.
    // ladder 5, 3, 2: narrower after 2 hits of the last 3, wider after 2 misses of the last 3, counting anew after each change.
    [InlineData("""{ "kind": "ladder", "widthsBoards": [5, 3, 2], "hits": 2, "misses": 2, "ofLast": 3 }""", 5, "HHMHHMM", "5 3 3 3 2 2 3")]
    // staircase in boards: two hits in a row 1 narrower, one miss 1 wider.
    [InlineData("""{ "kind": "staircase", "hits": 2, "misses": 1, "stepBoards": 1 }""", 5, "HHHHMHM", "5 4 4 3 4 4 5")]
    [InlineData("""{ "kind": "fixed" }""", 3, "HMH", "3 3 3")]
    // weighted, goal 75 %: a hit half an octave narrower (/ 1.4142), a miss three times as far wider (* 2.8284), at most 9.
    [InlineData("""{ "kind": "weighted", "goalHitRate": 0.75, "narrowerOctaves": 0.5 }""", 4, "HHMMH", "2.83 2 5.66 9 6.36")]
    public void Json_Sizing_WidthsAsWorkedByHand(string sizing, double width, string shots, string widths)
    {
        var drill = _work.File("d.json", $$"""
            { "format": 1, "id": "own", "name": "Own", "purpose": "A test.", "whoFor": "Tests.", "aboutMinutes": 1,
              "blocks": [ { "name": "b", "kind": "training",
                "aims": [ { "name": "t", "mark": "arrow 2", "widthBoards": {{width}}, "sizing": {{sizing}} } ],
                "order": { "kind": "serial" }, "until": { "shots": {{shots.Length}} }, "feedback": { "when": "every", "says": "hit" } } ] }
            """);

        var replay = Replay(drill, "arrowsBoard,note\n" + string.Concat(shots.Select((shot, i) => $"{(shot == 'H' ? 10 : 15)},{i}\n")));

        Assert.Equal(widths, string.Join(' ', Shots(replay).Select(shot => shot.GetProperty("nextWidthsBoards")[0].GetRawText())));
    }

    [Fact]
    public void Json_ScatterThreeOnTheCentre_WidthsAsWorkedByHand()
    {
        // docs/sizing.md by hand: before any shot df 4, scale 2.263, t(0.875) 1.344: 6.08, shown 6. Each exact width then at most a fifth
        // narrower, rounded to half a board: df 5, 1.753, 1.301: 4.56, so 4.87 and 5; df 5.98, 1.512, 1.274: 3.85, so 3.89 and 4;
        // df 6.94, 1.360, 1.255: 3.41 and 3.5. The quantiles of Student's t: printed tables, from memory.
        var replay = Replay("fitted-target", "arrowsBoard,note\n10,1\n10,2\n10,3\n");

        Assert.Equal(6, Targets(replay).First().GetProperty("widthBoards").GetDouble());
        Assert.Equal("5 4 3.5", string.Join(' ', Shots(replay).Select(shot => shot.GetProperty("nextWidthsBoards")[0].GetRawText())));
    }

    [Fact]
    public void Json_Walk_MovesTheTargets()
    {
        var replay = Replay("walk-the-lane", "arrowsBoard\n" + string.Concat(Enumerable.Range(0, 30).Select(i => $"{10 + (i / 10.0):0.0}\n")));

        var centres = Shots(replay).Select(shot => shot.GetProperty("targets")[0].GetProperty("centreBoard").GetDouble()).Distinct().ToList();
        Assert.True(centres.Count > 2, $"only at {string.Join(", ", centres)}");
        Assert.Equal(centres.Order(), centres);
    }

    [Theory]
    [InlineData("fitted-target")]
    [InlineData("three-in-four")]
    [InlineData("stairs")]
    [InlineData("random-arrows")]
    public void Json_SameTwice_SameBytesAndPlainNumbers(string drill)
    {
        var csv = "arrowsBoard,boardAt40\n" + string.Concat(Enumerable.Range(0, 60).Select(i => $"{9 + (i * 7 % 23 / 10.0):0.0},{6 + (i * 5 % 41 / 10.0):0.0}\n"));
        var file = _work.File("s.csv", csv);

        var first = _work.Run("replay", "--drill", drill, "--shots", file, "--seed", "5", "--json");
        var second = _work.Run("replay", "--drill", drill, "--shots", file, "--seed", "5", "--json");

        Assert.Equal(0, first.Code);
        Assert.Equal(first.Out, second.Out);
        foreach (var number in Numbers(first.Json()))
        {
            Assert.Matches(@"^-?\d+(\.\d+)?$", number);
        }
    }

    [Fact]
    public void Text_NarrowTarget_EveryShotAndTheFigures()
    {
        var ran = _work.Run("replay", "--drill", "ten-shot-spread", "--shots", _work.File("s.csv", TenShots));

        Assert.Equal(0, ran.Code);
        Assert.Contains("  6 |....+....+....+....+....+..x===...+....|  12.00 2.00 left   close  1", ran.Out, StringComparison.Ordinal);
        Assert.Contains("second arrow  9 of 10     90 % (60 to 98)  0.40 left      0.93   8.9..12      0.84   1.01", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Error_SomeBadRowsAndTooManyShots_EachSaidOnceRestGraded()
    {
        var ran = _work.Run("replay", "--drill", "ten-shot-spread", "--shots", _work.File("s.csv", TenShots + "x\n10\n9.9\n"), "--json");

        Assert.Equal(0, ran.Code);
        Assert.Equal(10, Int(ran.Json(), "shots"));
        Assert.Contains("s.csv:12: arrowsBoard: found", ran.Error, StringComparison.Ordinal);
        Assert.Contains("2 shots left over, not graded", ran.Error, StringComparison.Ordinal);
        Assert.Contains("1 problem, see above", ran.Error, StringComparison.Ordinal);
    }

    private JsonElement Replay(string drill, string csv, params string[] more)
    {
        var ran = _work.Run(["replay", "--drill", drill, "--shots", _work.File("s.csv", csv), "--json", .. more]);
        Assert.True(ran.Code == 0, ran.Error);
        return ran.Json();
    }

    private static List<JsonElement> Shots(JsonElement replay) => [.. replay.GetProperty("blocks").EnumerateArray().SelectMany(block => block.GetProperty("shots").EnumerateArray())];

    private static IEnumerable<JsonElement> Targets(JsonElement replay, int? shot = null) =>
        Shots(replay).Where((_, i) => shot is null || i == shot).SelectMany(one => one.GetProperty("targets").EnumerateArray());

    private static int Int(JsonElement element, string key) => element.GetProperty(key).GetInt32();

    private static IEnumerable<string> Keys(JsonElement element) => element.EnumerateObject().Select(property => property.Name);

    private static IEnumerable<string> Numbers(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(property => Numbers(property.Value)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Numbers),
        JsonValueKind.Number => [element.GetRawText()],
        _ => [],
    };
}
