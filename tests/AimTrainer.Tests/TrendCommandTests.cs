using System.Globalization;
using System.Text;
using System.Text.Json;

namespace AimTrainer.Tests;

public sealed class TrendCommandTests : IDisposable
{
    // Source: learn.session24: an invented series of variable errors, worked out with SciPy 1.10.1 / NumPy 1.24.2 and R 4.2.2.
    private static readonly double[] TwentyFour =
    [
        3.1, 2.86, 2.71, 2.55, 2.49, 2.31, 2.3, 2.13, 2.17, 2.02, 1.98, 1.99, 1.86, 1.9, 1.79, 1.82, 1.74, 1.78, 1.7, 1.73, 1.69, 1.66, 1.7, 1.63,
    ];

    private const string TestDrill = """
        {
          "format": 1, "id": "only-a-test", "name": "Only a test", "purpose": "Measures.", "whoFor": "Everybody.", "aboutMinutes": 10,
          "cautions": ["Nobody walks past the foul line to place, check or measure a target: the lane beyond it is oiled and slippery."],
          "blocks": [{
            "name": "Test", "kind": "test", "aims": [{ "name": "second arrow", "mark": "arrow 2", "widthBoards": 3 }],
            "order": { "kind": "serial" }, "until": { "shots": 15 }
          }]
        }
        """;

    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Trend_SeriesAsJson_AgreesWithAnotherProgram()
    {
        var ran = _work.Run("trend", "--series", SeriesFile(TwentyFour), "--json");

        Assert.Equal((0, ""), (ran.Code, ran.Error));
        var figures = ran.Json().GetProperty("figures");
        double Of(string first, string second) => figures.GetProperty(first).GetProperty(second).GetDouble();
        // Source: learn.session24, its "mk", "sen", "linear" and "exp3" parts; tolerance 1e-6.
        Assert.Equal(-259, Of("mannKendall", "s"));
        Assert.Equal(-6.401505568858181, Of("mannKendall", "z"), 1e-9);
        Assert.Equal(-0.049999999999999975, Of("ofValuesAt95", "slope"), 1e-9);
        Assert.Equal(-0.06215268700517296, Of("ofValuesAt95", "low"), 1e-9);
        Assert.Equal(-0.038543236347161586, Of("ofValuesAt95", "high"), 1e-9);
        Assert.Equal(-0.05446521739130434, Of("lineOfValues", "slope"), 1e-9);
        var exponential = figures.GetProperty("curves").GetProperty("exponential");
        Assert.Equal(1.5869530430063012, exponential.GetProperty("asymptote").GetDouble(), 1e-6);
        Assert.Equal(0.1306645253939963, exponential.GetProperty("rate").GetDouble(), 1e-6);
        Assert.Equal(-81.69673160325401, exponential.GetProperty("criteria").GetProperty("bayes").GetDouble(), 1e-6);
        Assert.Equal("exponential", figures.GetProperty("curves").GetProperty("named").GetString());
        Assert.Equal("improved", figures.GetProperty("rule").GetProperty("verdict").GetString());
        Assert.Equal(5, figures.GetProperty("rule").GetProperty("looks").GetArrayLength());
        Assert.Equal(4, figures.GetProperty("ewma").GetProperty("averages").GetArrayLength());
        Assert.True(figures.GetProperty("shift").GetProperty("found").GetBoolean());
    }

    [Fact]
    public void Trend_SeriesAsText_SaysWhatIsKnown()
    {
        var ran = _work.Run("trend", "--series", SeriesFile(TwentyFour));

        Assert.Equal(0, ran.Code);
        string[] said =
        [
            "24 sessions with a value", "Spread now: 1.65 boards (95 %: 1.61 to 1.69), by the line through the newest 8 tests.",
            "Change: 2.4 % less a session (99 %: 3.0 % less to 1.8 % less).",
            "Improved: at the look after 24 sessions all of the 99 % interval lies below no change. Next look at 28.",
            "Learning curve: exponential, towards 1.59 (95 %: 1.53 to 1.64); half of what is left is gained every 5.3 sessions.",
            "Worth a look: the level seems to shift after session 9",
        ];
        Assert.All(said, words => Assert.Contains(words, ran.Out, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0, "not known, no test yet", "8 more")]
    [InlineData(1, "3.10 boards; 1 test only, no interval yet", "7 more")]
    [InlineData(2, "2.86 boards; 2 tests only, no interval yet", "6 more")]
    [InlineData(3, "(95 %:", "5 more")]
    public void Trend_FewSessions_SaysWhatIsMissing(int count, string now, string more)
    {
        var file = SeriesFile(TwentyFour[..count]);
        var (text, json) = (_work.Run("trend", "--series", file), _work.Run("trend", "--series", file, "--json"));

        Assert.Equal((0, 0), (text.Code, json.Code));
        Assert.Contains(now, text.Out, StringComparison.Ordinal);
        Assert.Contains($"Whether it changes is not known: the first look needs 8 sessions, {more}.", text.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Improved", text.Out, StringComparison.Ordinal);
        Assert.Equal(count, json.Json().GetProperty("figures").GetProperty("count").GetInt32());
    }

    [Fact]
    public void Trend_NineSessions_TheWordIsThatOfTheLookAtEight()
    {
        var rule = _work.Run("trend", "--series", SeriesFile(TwentyFour[..9]), "--json").Json().GetProperty("figures").GetProperty("rule");

        Assert.Equal((8, 12), (Assert.Single(rule.GetProperty("looks").EnumerateArray()).GetProperty("sessions").GetInt32(), rule.GetProperty("nextLookAt").GetInt32()));
    }

    [Fact]
    public void Trend_AllEqual_ClaimsNothing()
    {
        var file = SeriesFile([.. Enumerable.Repeat(1.5, 12)]);
        var (text, json) = (_work.Run("trend", "--series", file), _work.Run("trend", "--series", file, "--json"));

        Assert.Equal((0, 0), (text.Code, json.Code));
        Assert.Contains("Change: unchanged a session (no limits yet)", text.Out, StringComparison.Ordinal);
        Assert.Contains("Neither less nor more spread can be said", text.Out, StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, json.Json().GetProperty("figures").GetProperty("mannKendall").GetProperty("p").ValueKind);
    }

    [Fact]
    public void Trend_MissingValuesAndOtherOrder_AreLeftAsideAndSorted()
    {
        var file = _work.File("s.csv", "\uFEFFnote, Value ,SESSION\r\nx,2.0,3\r\n,,2\r\n\r\ny,\"3.0\",1\r\n");
        var json = _work.Run("trend", "--series", file, "--kind", "other", "--json").Json();

        Assert.Equal([1.0, 3.0], json.GetProperty("points").EnumerateArray().Select(point => point.GetProperty("session").GetDouble()));
        Assert.Equal([2.0], json.GetProperty("missingSessions").EnumerateArray().Select(session => session.GetDouble()));
        Assert.Equal(-0.5, json.GetProperty("figures").GetProperty("at95").GetProperty("slope").GetDouble(), 1e-12);
        Assert.Equal(JsonValueKind.Null, json.GetProperty("figures").GetProperty("rule").ValueKind);
        Assert.Contains("2 sessions with a value, 1 more without a value", _work.Run("trend", "--series", file).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Trend_OtherThanSpread_IsNeverCalledImproved()
    {
        var ran = _work.Run("trend", "--series", SeriesFile([.. TwentyFour.Select(value => value - 3)]), "--kind", "other");

        Assert.Equal(0, ran.Code);
        Assert.Contains("It falls: the limits leave out no change.", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("mproved", ran.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "found an empty file; allowed: the headings session,value")]
    [InlineData("session;value\n1;2\n", "s.csv:1: found the headings \"session;value\"; allowed: the headings session,value")]
    [InlineData("session,value\n1,2\n1,3\n", "s.csv:3: session: found 1 again; allowed: each session once; it is also in line 2")]
    [InlineData("session,value\n1,2\n2,x\n", "s.csv:3: value: found \"x\"; allowed: a number with a decimal point")]
    [InlineData("session,value\n1,0\n", "s.csv:2: value: found 0; allowed: more than 0")]
    [InlineData("session,value\nNaN,1\n", "s.csv:2: session: found \"NaN\"; allowed: a number")]
    [InlineData("session,value\n1,1e300\n", "s.csv:2: value: found \"1e300\"; allowed: a number")]
    [InlineData("session,value\n,1\n", "s.csv:2: session: found nothing; allowed: a number")]
    [InlineData("a\0b", "bytes that are no text")]
    public void Trend_WrongSeries_SaysWhereAndWhat(string text, string words)
    {
        var ran = _work.Run("trend", "--series", _work.File("s.csv", text));

        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Trend_TooManySessions_SaysHowManyAreAllowed()
    {
        var ran = _work.Run("trend", "--series", SeriesFile([.. Enumerable.Repeat(1.0, 1001)]));

        Assert.Equal(2, ran.Code);
        Assert.Contains("found session number 1001; allowed: at most 1000 sessions", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("trend", "give a bowler, or a file with --series, one of the two")]
    [InlineData("trend Ann --series x.csv", "give a bowler, or a file with --series, one of the two")]
    [InlineData("trend --series /no/such/file", "/no/such/file: no such file")]
    [InlineData("trend --series x.csv --weeks 3", "--series: goes with --kind and --json only")]
    [InlineData("trend Ann --kind other", "--kind: is for a file given with --series")]
    [InlineData("trend --series x.csv --kind both", "--kind: found both; allowed: spread, other")]
    [InlineData("trend Ann --from 1.9.2026", "--from: found 1.9.2026; allowed: a day such as 2026-09-01")]
    [InlineData("trend Ann --from 2026-09-02 --to 2026-09-01", "--from, --to: the first day must not lie after the last")]
    [InlineData("trend Ann --weeks 8", "a program needs --starts (a day), --weeks and --sessions-a-week (whole numbers)")]
    [InlineData("trend Ann --starts 2026-09-01 --weeks 8 --sessions-a-week 1.5", "a program needs --starts (a day), --weeks and --sessions-a-week (whole numbers)")]
    [InlineData("trend Ann --program p.json --weeks 8", "--program: a file, or --starts, --weeks, --sessions-a-week and --goal, not both")]
    [InlineData("trend Ann --goal 0", "--goal: found 0; allowed: 0.1 to 10")]
    [InlineData("trend Ann", "no record here yet; run a session first")]
    public void Trend_WrongUsage_OneLineAndExitCode2(string line, string words)
    {
        var ran = _work.Run(line.Split(' '));

        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
        Assert.Equal(ran.Error.Length - 1, ran.Error.IndexOf('\n', StringComparison.Ordinal));
    }

    [Fact]
    public void Trend_Help_SaysWhatItDoes()
    {
        var ran = _work.Run("trend", "--help");

        Assert.Equal(0, ran.Code);
        Assert.Contains("from test blocks only", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Trend_TrainingOnly_SaysWhatIsMissing()
    {
        _work.Run("demo", "--once", "--seed", "7");
        var (text, json, nobody) = (_work.Run("trend", "demo bowler"), _work.Run("trend", "Demo Bowler", "--json"), _work.Run("trend", "Somebody"));

        Assert.Equal((0, 0, 2), (text.Code, json.Code, nobody.Code));
        Assert.Contains("(simulated: every shot is invented)", text.Out, StringComparison.Ordinal);
        Assert.Contains("No test block yet.", text.Out, StringComparison.Ordinal);
        Assert.True(json.Json().GetProperty("simulated").GetBoolean());
        Assert.Equal(0, json.Json().GetProperty("series").GetArrayLength());
        Assert.Contains("Somebody: no session of this bowler is stored here", nobody.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Trend_NineRecordedSessionsOfALeftHander_AgreesWithTheShots()
    {
        var spreads = Enumerable.Range(0, 9).Select(Import).ToArray();
        var (text, json) = (_work.Run("trend", "Lee"), _work.Run("trend", "lee", "--json").Json());

        var series = Assert.Single(json.GetProperty("series").EnumerateArray());
        var points = series.GetProperty("points").EnumerateArray().ToList();
        Assert.Equal(("left", 9, "at the arrows"), (json.GetProperty("hand").GetString(), points.Count, series.GetProperty("place").GetString()));
        Assert.All(points.Zip(spreads), pair => Assert.Equal(pair.Second, pair.First.GetProperty("spreadBoards").GetDouble(), 1e-9));

        // The same by way of a file of the spreads: all sessions have as many shots, so their logarithms differ by a constant only.
        var same = _work.Run("trend", "--series", SeriesFile(spreads), "--json").Json().GetProperty("figures");
        foreach (var limit in (string[])["slope", "low", "high"])
        {
            Assert.Equal(
                same.GetProperty("atRule").GetProperty(limit).GetDouble(), series.GetProperty("spread").GetProperty("atRule").GetProperty(limit).GetDouble(), 1e-9);
        }

        // Higher boards lie to a left-hander's right.
        Assert.Contains("Lee, left hand: 9 sessions, 2026-03-01 to 2026-04-26 (UTC)", text.Out, StringComparison.Ordinal);
        Assert.Contains("0.50 right", text.Out, StringComparison.Ordinal);
        Assert.Contains("at the look after 8 sessions", text.Out, StringComparison.Ordinal);

        var part = _work.Run("trend", "Lee", "--from", "2026-03-08", "--to", "2026-03-15");
        Assert.Contains("2 sessions with at least 15 test shots", part.Out, StringComparison.Ordinal);
        Assert.Contains("The period was chosen by hand.", part.Out, StringComparison.Ordinal);

        var program = _work.File("p.json", """{ "format": 1, "starts": "2026-03-01", "weeks": 8, "sessionsAWeek": 1, "goalSpreadBoards": 9 }""");
        var planned = _work.Run("trend", "Lee", "--program", program);
        Assert.Contains("Program: 8 weeks from 2026-03-01, 1 session a week. 8 weeks over: 8 of 8 planned sessions done.", planned.Out, StringComparison.Ordinal);
        Assert.Contains("Goal: a spread of 9.00 boards at the arrows: reached. Now", planned.Out, StringComparison.Ordinal);
        Assert.Contains("Stop when the hand, wrist or arm hurts", planned.Out, StringComparison.Ordinal);
        Assert.Equal(
            "reached", _work.Run("trend", "Lee", "--program", program, "--json").Json().GetProperty("program").GetProperty("goal").GetProperty("standing").GetString());
        var half = _work.File("half.json", """{ "format": 1, "starts": "2026-03-01", "sessionsAWeek": 1 }""");
        Assert.Contains("half.json:1: $: found no \"weeks\"", _work.Run("trend", "Lee", "--program", half).Error, StringComparison.Ordinal);
    }

    /// <summary>Imports a session, one a week, and gives its spread as a hand finds it: misses of 0.5 ± a size that falls week by week.</summary>
    private double Import(int week)
    {
        var size = 2 - (0.1 * week) + (week % 3 * 0.05);
        var text = new StringBuilder("time,arrowsBoard\n");
        var boards = new List<double>();
        for (var shot = 0; shot < 15; shot++)
        {
            boards.Add(Math.Round(10.5 + (size * ((shot % 3) - 1)), 2));
            text.Append(CultureInfo.InvariantCulture, $"{new DateTime(2026, 3, 1, 18, shot, 0).AddDays(7 * week):yyyy-MM-ddTHH:mm:ssZ},{boards[^1]:0.00}\n");
        }

        var drill = _work.File("test.json", TestDrill);
        var ran = _work.Run("shots", "import", _work.File($"{week}.csv", text.ToString()), "--drill", drill, "--bowler", "Lee", "--hand", "left");
        Assert.True(ran.Code == 0, ran.Error);
        var mean = boards.Average();
        return Math.Sqrt(boards.Sum(board => (board - mean) * (board - mean)) / 14);
    }

    private string SeriesFile(double[] values) => _work.File(
        "series.csv", "session,value\n" + string.Concat(values.Select((value, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1},{value:R}\n"))));
}
