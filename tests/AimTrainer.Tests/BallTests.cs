namespace AimTrainer.Tests;

public sealed class BallTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Set_NewThenMore_KeepsWhatWasKnownAndListsIt()
    {
        Assert.Equal(0, _work.Run("ball", "set", "--bowler", "Ann", "--name", "Blue One", "--surface", "2000 grit", "--weight", "15").Code);
        var changed = _work.Run("ball", "set", "--bowler", "ann", "--name", "BLUE one", "--gyration", "2.487", "--differential", "0.048", "--layout", "pin up", "--games", "12");

        Assert.Equal("kept: Ann's Blue One, surface 2000 grit, 15 lb, radius of gyration 2.487 in, differential 0.048 in, layout pin up, 12 games since surface work\n", changed.Out);
        var ball = Assert.Single(_work.Run("ball", "list", "--json").Json().EnumerateArray());
        Assert.Equal(("Blue One", 15, 0.048), (
            ball.GetProperty("details").GetProperty("name").GetString(), ball.GetProperty("details").GetProperty("weightPounds").GetDouble(),
            ball.GetProperty("details").GetProperty("differentialInches").GetDouble()));
        Assert.Contains("2000 grit", _work.Run("ball", "list", "--bowler", "ANN").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Surface_WorkAndScan_AreListedNewestFirst()
    {
        _work.Run("ball", "set", "--bowler", "Ann", "--name", "Blue", "--games", "30");
        Assert.Equal("kept: Blue, scan: 31.5 Ra\n", _work.Run("ball", "surface", "--bowler", "Ann", "--name", "Blue", "--scan", "31.5", "--unit", "Ra").Out);
        Assert.Equal(0, _work.Run("ball", "surface", "--bowler", "Ann", "--name", "blue", "--work", "1000 grit", "--note", "by hand").Code);

        var list = _work.Run("ball", "list").Out;
        var (work, scan) = (list.IndexOf("surface work: 1000 grit, after 30 games; by hand", StringComparison.Ordinal), list.IndexOf("scan: 31.5 Ra, after 30 games", StringComparison.Ordinal));
        Assert.True(work >= 0 && scan > work, list);
    }

    [Theory]
    [InlineData("ball set --bowler Ann", "--name")]
    [InlineData("ball set --bowler Ann --name B --weight 40", "--weight: found 40; allowed: 6 to 16")]
    [InlineData("ball set --bowler Ann --name B --games 1.5", "--games: found 1.5; allowed: a whole number")]
    [InlineData("ball surface --bowler Ann --name B", "--work, --scan: give exactly one of them")]
    [InlineData("ball surface --bowler Ann --name B --work x --scan 3 --unit Ra", "--work, --scan: give exactly one of them")]
    [InlineData("ball surface --bowler Ann --name B --scan 3", "--scan and --unit")]
    [InlineData("ball surface --bowler Ann --name B --work x", "Ann has no ball \"B\" in this record")]
    [InlineData("run --drill two-balls-by-eye", "no ball is chosen for \"reference\", \"other\"")]
    [InlineData("run --drill two-balls-by-eye --balls reference=Old", "no ball is chosen for \"other\"")]
    [InlineData("run --drill two-balls-by-eye --balls reference=Old;other=OLD", "are the same ball")]
    [InlineData("run --drill two-balls-by-eye --balls Old", "--balls: found \"Old\"; allowed: ROLE=NAME")]
    [InlineData("run --drill ten-shot-spread --balls reference=Old;other=New", "compares no balls")]
    public void Run_BadInput_SaysWhatToDo(string command, string said)
    {
        var ran = _work.Run(command.Split(' '));

        Assert.Equal(2, ran.Code);
        Assert.Contains(said, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_ComparisonTyped_SaysWhoThrowsWhatIsWantedAndAWrongBall()
    {
        var ran = _work.Typed(
            """
            10/6
            10/7
            14/6
            ball 2 reference
            ball 99 x
            ball
            10/6
            leave
            """,
            "run", "--drill", "two-balls-by-eye", "--balls", "reference=Old one;other=New one");

        Assert.Equal(0, ran.Code);
        InOrder(
            ran.Out,
            "Throw Old one (reference): 4 more good throws at line 1 of 3", "Good so far: Old one 0 of 4, New one 0 of 4. Wipe the ball with a dry towel; no liquids during play.",
            "     Old one\n", "Throw New one (other): 4 more good throws at line 1 of 3", "     New one\n", "Throw New one (other): 3 more good throws",
            "     New one; no good throw: second arrow missed, so it was thrown along another line",
            "     shot 2 corrected; both values are kept", "thrown with Old one, not New one: it counts for Old one; New one is still due", "Good so far: Old one 2 of 4, New one 0 of 4.",
            "ball: shot 99 is not among the last ten", "ball: found \"\"; allowed: the shot's number and the ball's name");
        Assert.Equal(["New one", "Old one"], _work.Run("ball", "list", "--json").Json().EnumerateArray().Select(ball => ball.GetProperty("details").GetProperty("name").GetString()));
    }

    [Fact]
    public void Run_GoOnAfterLeaving_SaysAgainWhoThrows()
    {
        _work.Typed("10/6\nleave\n", "run", "--drill", "two-balls-by-eye", "--balls", "reference=Old one;other=New one");

        Assert.Contains("Throw New one (other): 4 more good throws at line 1 of 3", _work.Typed("leave\n", "run", "--go-on").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Export_Comparison_IsReadByCompareLineByLine()
    {
        // Invented: the new ball two boards farther inside at 42 ft, with a little scatter.
        var typed = string.Concat(Enumerable.Range(0, 8).Select(i => FormattableString.Invariant($"10/{6 + (i % 4 is 1 or 2 ? 2 : 0) + (0.1 * (i % 3))}\n")));
        _work.Typed(typed + "end\n", "run", "--drill", "two-balls-by-eye", "--balls", "reference=Old one;other=New one");
        var csv = _work.Run("sessions", "export", "last").Out;

        Assert.Contains("ball,", csv, StringComparison.Ordinal);
        Assert.Contains("around the second arrow", csv, StringComparison.Ordinal);
        var compared = _work.Run("compare", "--shots", _work.File("shots.csv", csv), "--reference", "old ONE", "--json").Json();
        Assert.Equal(("Old one", 8), (compared.GetProperty("reference").GetString(), compared.GetProperty("shots").GetInt32()));
        Assert.Equal("around the second arrow", compared.GetProperty("lines")[0].GetProperty("line").GetString());
    }

    [Fact]
    public void Replay_Json_SaysBallRoleCheckAndWhyNotGood()
    {
        var shots = _work.File("shots.csv", "ball,arrowsBoard,boardAt42\n,10,6\n,14,6\nThird,10,6\n");

        var replayed = _work.Run("replay", "--drill", "two-balls-by-eye", "--balls", "reference=Old;other=New", "--shots", shots, "--json").Json();
        var compared = replayed.GetProperty("blocks")[0].GetProperty("shots").EnumerateArray().Select(shot => shot.GetProperty("compared")).ToList();
        Assert.Equal("comparison", replayed.GetProperty("blocks")[0].GetProperty("kind").GetString());
        Assert.Equal(["Old", "New", "Third"], compared.Select(one => one.GetProperty("ball").GetString()));
        Assert.Equal(["reference", "other", null], compared.Select(one => one.GetProperty("role").GetString()));
        Assert.Equal([true, false, false], compared.Select(one => one.GetProperty("good").GetBoolean()));
        Assert.Equal([false, false, true], compared.Select(one => one.GetProperty("ballWasNamed").GetBoolean()));
        Assert.Equal("around the second arrow", compared[0].GetProperty("line").GetString());
    }

    [Fact]
    public void DrillShow_Comparison_SaysOrderAndEnd() => InOrder(
        _work.Run("drill", "show", "two-balls-by-eye").Out,
        "(comparison; reference, other: there and back, as A B B A; 4 good throws of each at each line, at most 10; good only through the first target; every 8 shots the reference ball checks the lane; "
        + "until every ball has its throws at every line;");

    private static void InOrder(string text, params string[] words)
    {
        var at = 0;
        foreach (var said in words)
        {
            var found = text.IndexOf(said, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"not said, or not in this order: {said}\n{text}");
            at = found + said.Length;
        }
    }
}
