using System.Globalization;
using System.Text;
using System.Text.Json;

namespace AimTrainer.Tests;

public sealed class CompareTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Json_TwoLines_DifferenceThatWasPutInIsFound()
    {
        var found = Compare(Csv(12), "--reference", "Red");

        Assert.Equal(("Red", 48), (found.GetProperty("reference").GetString(), found.GetProperty("shots").GetInt32()));
        var lines = found.GetProperty("lines").EnumerateArray().ToList();
        Assert.Equal(["outside", "inside"], lines.Select(line => line.GetProperty("line").GetString()));
        foreach (var line in lines)
        {
            var entry = line.GetProperty("measures").EnumerateArray().Single(one => one.GetProperty("measure").GetProperty("name").GetString() == "entryBoard");
            var difference = entry.GetProperty("best").GetProperty("difference");
            Assert.InRange(2, difference.GetProperty("low").GetDouble(), difference.GetProperty("high").GetDouble());
            Assert.Equal("differentBeyondMargin", entry.GetProperty("verdict").GetString());
        }

        Assert.Equal(2, found.GetProperty("overall")[0].GetProperty("lines").GetInt32());
        Assert.Equal(4, found.GetProperty("balls").GetArrayLength());
    }

    [Fact]
    public void Record_OfADrillThatCompares_AShotThatNamesNoBallIsOfTheOneThatWasDue()
    {
        Assert.Equal(0, _work.Run("demo", "--once", "--drill", "two-balls-by-eye", "--balls", "reference=Old;other=New", "--seed", "4").Code);

        var compared = _work.Run("compare", "--bowler", "demo bowler", "--json").Json();

        Assert.Equal("Old", compared.GetProperty("comparison").GetProperty("reference").GetString());
        Assert.Equal(["New", "Old"], compared.GetProperty("throws").EnumerateArray().Select(one => one.GetProperty("ball").GetString()).Distinct().Order());
        Assert.DoesNotContain("nobody said with which ball", compared.ToString(), StringComparison.Ordinal);
        Assert.Equal(["Old", "New"], compared.GetProperty("sessions")[0].GetProperty("balls").EnumerateArray().Select(ball => ball.GetString()));
    }

    [Fact]
    public void Json_EveryKey_IsInTheDocs()
    {
        var docs = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "comparison.md"));
        var keys = Keys(Compare(Csv(12) + "Red,outside,44,40,20,17,release\n", "--reference", "red", "--laydown-within", "10")).Distinct().ToList();

        Assert.Contains("fileLine", keys);
        Assert.True(keys.Count > 60);
        Assert.All(keys, key => Assert.True(docs.Contains($"`{key}`", StringComparison.Ordinal), key));
    }

    [Fact]
    public void Text_TwoLines_SaysFindingsTablesAndWhatWasLeftOut()
    {
        var ran = _work.Run(
            "compare", "--shots", _work.File("s.csv", Csv(12) + "Red,outside,44,40,20,17,release\n"), "--reference", "red", "--target", "15@15");

        Assert.Equal(0, ran.Code);
        Assert.Contains("s.csv: 49 shots, held against Red. Limits in brackets are 95 %.", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Blue against Red on inside", ran.Out, StringComparison.Ordinal);
        Assert.Matches(@"Blue is [0-9.]+ boards \([0-9.]+ to [0-9.]+\) further inside at the pins", ran.Out);
        Assert.Contains("Adjusted for: laydown, speed and the drift of the lane. Not adjusted for: launch angle not measured; revs not measured.", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Over all lines, each counting the same", ran.Out, StringComparison.Ordinal);
        Assert.Contains("shot 49 (line 50), Red: in the gutter", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Shots_TheSameTwice_IsTakenOnceAndSaid()
    {
        var csv = "id," + Csv(6).Replace("\n", "\nx,", StringComparison.Ordinal);
        var ids = 0;
        var numbered = string.Join('\n', csv.Split('\n').Where(row => row.Length > 2)
            .Select(row => row.StartsWith("x,", StringComparison.Ordinal) ? $"s{(ids / 4 * 2) + (ids++ % 2)}{row[1..]}" : row));
        Assert.Equal(12, Compare(numbered, "--reference", "red").GetProperty("repeatedShots").GetInt32());
    }

    [Theory]
    [InlineData("Red,a,20,20,10,17,release\n", "one throw only, with the ball Red")]
    [InlineData("Red,a,20,20,10,17,release\nRED,a,20,20,10,17,release\n", "one ball only, Red")]
    [InlineData("Blue,a,20,20,10,17,release\n", "no throw with the ball \"red\"; allowed: Blue")]
    [InlineData(",a,20,20,10,17,release\n", "no throw names its ball")]
    [InlineData("Red,a,44,20,10,17,release\nBlue,a,20,44,10,17,release\n", "nothing can be compared: 1 throw is left out")]
    [InlineData("Red,a,20,,,,\nBlue,a,20,,,,\n", "nothing can be compared")]
    [InlineData("Red,a,x,20,10,17,release\n", "no shot in it could be read, see above")]
    public void Shots_NothingToCompare_IsBadInputInWords(string rows, string words)
    {
        var ran = _work.Run("compare", "--shots", _work.File("s.csv", "ball,line,laydownBoard,entryBoard,breakpointBoard,speedMph,speedAt\n" + rows), "--reference", "red");

        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
        Assert.Contains("s.csv", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--margin", "0")]
    [InlineData("--margin-degrees", "x")]
    [InlineData("--target", "50@15")]
    public void Option_OutsideItsRange_IsRefusedInWords(string option, string value)
    {
        var ran = _work.Run("compare", "--shots", _work.File("s.csv", Csv(6)), "--reference", "red", option, value);
        Assert.Equal(2, ran.Code);
        Assert.StartsWith($"{option}: found {value}; allowed: ", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Record_OfABowler_ComparesHerSessionsInEveryFormat()
    {
        Import();
        var json = _work.Run("compare", "--bowler", "ann", "--json").Json();

        Assert.Equal(("Ann", false), (json.GetProperty("bowler").GetString(), json.GetProperty("simulated").GetBoolean()));
        var comparison = json.GetProperty("comparison");
        Assert.Equal("Red", comparison.GetProperty("reference").GetString());
        var line = Assert.Single(comparison.GetProperty("lines").EnumerateArray());
        Assert.Equal("board 10 at 15 ft", line.GetProperty("line").GetString());
        var entry = line.GetProperty("measures").EnumerateArray().Single(one => one.GetProperty("measure").GetProperty("name").GetString() == "entryBoard");
        var difference = entry.GetProperty("best").GetProperty("difference");
        Assert.InRange(2, difference.GetProperty("low").GetDouble(), difference.GetProperty("high").GetDouble());
        foreach (var (ending, begins) in new[] { ("html", "<!DOCTYPE html>"), ("pdf", "%PDF"), ("png", "\u0089PNG"), ("csv", "section,item"), ("json", "{") })
        {
            var file = Path.Combine(_work.Folder, $"balls.{ending}");
            var ran = _work.Run("compare", "--bowler", "Ann", "--balls", "blue,RED", "--out", file);
            Assert.Equal((0, ""), (ran.Code, ran.Error));
            Assert.StartsWith(begins, Encoding.Latin1.GetString(File.ReadAllBytes(file)), StringComparison.Ordinal);
            Assert.Contains("Red is ", ran.Out, StringComparison.Ordinal);
            Assert.Contains($"Report written: {file}", ran.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Record_OfASession_SaysWhatWasFoundAndWhereEachBallFits()
    {
        Import();
        var id = _work.Run("compare", "--bowler", "Ann", "--json").Json().GetProperty("sessions")[0].GetProperty("sessionId").GetString()!;
        var ran = _work.Run("compare", "--session", id);

        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.StartsWith("Ann: 20 throws, 20 in the comparison; 0 left out of all, 0 of a measure in 1 session.", ran.Out, StringComparison.Ordinal);
        Assert.Matches(@"- Blue is [0-9.]+ boards \([0-9.]+ to [0-9.]+\) further inside at the pins", ran.Out);
        Assert.Contains("- On board 10 at 15 ft, where a ball turns is not known: Red, Blue (not measured).", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Out_OfAFile_WritesTheSameReport()
    {
        var file = Path.Combine(_work.Folder, "balls.html");
        var ran = _work.Run("compare", "--shots", _work.File("s.csv", Csv(12)), "--reference", "red", "--out", file);

        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Contains("48 throws, 48 in the comparison", ran.Out, StringComparison.Ordinal);
        var html = File.ReadAllText(file);
        Assert.Contains("Line A: outside", html, StringComparison.Ordinal);
        Assert.Contains("Line B: inside", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("compare --bowler Bob", "Bob: no session of this bowler is stored here; see: aimtrainer sessions list")]
    [InlineData("compare --session nowhere", "session: found \"nowhere\"; allowed: the id of a session")]
    [InlineData("compare --bowler Ann --reference Green", "--reference: found Green; allowed: Red, Blue")]
    [InlineData("compare --bowler Ann --from 2030-01-01", "Ann: no session with a shot in this period")]
    [InlineData("compare --bowler Ann --out a.doc", "a.doc: its ending names no format")]
    [InlineData("compare --bowler Ann --out a.pdf --json", "compare: write a file with --out, or print the figures with --json, one of the two")]
    [InlineData("compare --bowler Ann --format pdf", "--format: is for a file; name it with --out")]
    [InlineData("compare --bowler Ann --target 10@15", "--target, --hand, --lane, --map: go with --shots")]
    [InlineData("compare --shots a.csv --reference Red --balls Red,Blue", "--session, --balls, --from, --to: go with the record")]
    [InlineData("compare", "compare: give a file with --shots, or of the record a --bowler or a --session")]
    public void Record_WrongUsage_OneLineAndExitCode2(string line, string words)
    {
        Import();
        var ran = _work.Run(line.Split(' '));
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Reference_NotGiven_IsWrongUsage() => Assert.Equal(2, _work.Run("compare", "--shots", _work.File("s.csv", Csv(6))).Code);

    /// <summary>Invented throws in turn on two lines: Blue ends 2 boards further inside.</summary>
    private static string Csv(int each)
    {
        var text = new StringBuilder("ball,line,laydownBoard,entryBoard,breakpointBoard,speedMph,speedAt\n");
        for (var i = 0; i < 4 * each; i++)
        {
            var blue = i % 2 == 1;
            double Off(int what) => (((((i * 7) + what) * 37) % 101) / 101.0) - 0.5;
            text.Append(CultureInfo.InvariantCulture, $"{(blue ? "Blue" : "Red")},{(i < 2 * each ? "outside" : "inside")},{22 + Off(1):0.00},");
            text.Append(CultureInfo.InvariantCulture, $"{18 + Off(1) + (blue ? 2 : 0) + (0.3 * Off(2)):0.00},{10 + Off(1) + (0.3 * Off(3)):0.00},{17 + Off(4):0.00},release\n");
        }

        return text.ToString();
    }

    /// <summary>A session of 20 invented shots, two balls in turn: Blue ends 2 boards further inside.</summary>
    private void Import()
    {
        var text = new StringBuilder("time,ball,arrowsBoard,laydownBoard,entryBoard,speedMph,speedAt\n");
        for (var i = 0; i < 20; i++)
        {
            double Off(int what) => (((((i * 7) + what) * 37) % 101) / 101.0) - 0.5;
            text.Append(CultureInfo.InvariantCulture, $"{new DateTime(2026, 3, 1, 18, i, 0):yyyy-MM-ddTHH:mm:ssZ},{(i % 2 == 1 ? "Blue" : "Red")},{10 + Off(1):0.00},");
            text.Append(CultureInfo.InvariantCulture, $"{16 + Off(1):0.00},{17 + Off(1) + (i % 2 * 2) + (0.3 * Off(2)):0.00},{17 + (0.5 * Off(3)):0.00},release\n");
        }

        var ran = _work.Run("shots", "import", _work.File("import.csv", text.ToString()), "--drill", "fitted-target", "--bowler", "Ann", "--hand", "right");
        Assert.True(ran.Code == 0, ran.Error);
    }

    private static IEnumerable<string> Keys(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(member => Keys(member.Value).Prepend(member.Name)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Keys),
        _ => [],
    };

    private JsonElement Compare(string csv, params string[] args)
    {
        var ran = _work.Run(["compare", "--shots", _work.File("shots.csv", csv), .. args, "--json"]);
        Assert.True(ran.Code == 0, ran.Error);
        return ran.Json();
    }
}
