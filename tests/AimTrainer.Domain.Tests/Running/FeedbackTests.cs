namespace AimTrainer.Domain.Tests;

public class FeedbackTests
{
    private const string Line =
        """{ "name": "line", "line": [{ "name": "near", "board": 10, "feet": 15, "widthBoards": 3 }, { "name": "far", "board": 8, "feet": 40, "widthBoards": 5 }] }""";

    [Theory]
    [InlineData("hit", null, null)]
    [InlineData("side", -1, null)]
    [InlineData("exact", -1, -2.0)]
    public void Every_Says_AsMuchAsTheDrillSays(string says, int? side, double? miss)
    {
        var play = Play.Begun(Play.OneTarget($$""" "until": { "shots": 5 }, "feedback": { "when": "every", "says": "{{says}}" } """));
        play.Throw(-2.0);

        var told = Assert.Single(play.Told.Single().Results);

        Assert.False(told.Held);
        Assert.Equal(side, told.Targets.SingleOrDefault()?.Side);
        Assert.Equal(miss, told.Targets.SingleOrDefault()?.Miss?.Boards);
    }

    [Fact]
    public void Every_Unmeasured_IsToldAsUnknown()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 5 } """));
        play.Throw((double?)null);

        Assert.Equal(new ToldShot(1, null, [new ToldTarget("spot", null, null)]), Assert.Single(play.Told.Single().Results));
    }

    [Theory]
    [InlineData(1, 0, 20, 10)]
    [InlineData(1, 0.25, 12, 8)]
    [InlineData(0.5, 0.5, 10, 5)]
    [InlineData(0.9, 0.3, 17, 10)]
    [InlineData(0, 0, 10, 0)]
    [InlineData(1, 1, 7, 7)]
    public void Fading_WholeBlock_TellsTheRoundedSumOfShares(double first, double last, int shots, int told)
    {
        var play = Fading(first, last, shots);
        play.ThrowMany(shots, 0.0);

        // The shares of an arithmetic series add up to its mean times its length.
        Assert.Equal(told, (int)Math.Floor(((first + last) / 2 * shots) + 0.5));
        Assert.Equal(told, play.Told.Count(one => one.Results.Count > 0));
    }

    [Fact]
    public void Fading_FirstHalf_HearsMoreThanTheSecond()
    {
        var play = Fading(1, 0, 40);
        play.ThrowMany(40, 0.0);

        Assert.InRange(play.Told.Take(20).Count(told => told.Results.Count > 0), 14, 16);
        Assert.InRange(play.Told.Skip(20).Count(told => told.Results.Count > 0), 4, 6);
    }

    [Fact]
    public void Outside_HeldShot_HearsOnlyThat()
    {
        var play = Play.Begun(Play.Block(Line, """ "order": { "kind": "serial" }, "until": { "shots": 5 }, "feedback": { "when": "outside" } """));
        play.Throw(0, 1);

        Assert.Equal(new ToldShot(1, true, []), Assert.Single(play.Told.Single().Results));
    }

    [Fact]
    public void Outside_OneTargetOfALineMissed_HearsOfThatTargetOnly()
    {
        var play = Play.Begun(Play.Block(Line, """ "order": { "kind": "serial" }, "until": { "shots": 5 }, "feedback": { "when": "outside" } """));
        play.Throw(1, 4);

        var expected = new ToldShot(1, false, [new ToldTarget("far", 1, BoardOffset.FromBoards(4))]);
        Assert.Equal(expected, Assert.Single(play.Told.Single().Results));
    }

    [Fact]
    public void Summary_EveryThree_TellsAllAtOnceAndTheRestAtTheEnd()
    {
        var play = Summary(3, """ "shots": 8 """);
        play.ThrowMany(8, 0.0);

        Assert.Equal(["", "", "1 2 3", "", "", "4 5 6", "", "7 8"], Numbers(play));
        Assert.Null(play.Ended.Told);
    }

    [Fact]
    public void Summary_VoidedShots_NoneIsLostAndNoneToldTwice()
    {
        var play = Summary(3, """ "shots": 9 """);
        play.ThrowMany(4, 0.0);
        play.Void(2); // told already
        play.Void(4); // waits
        play.ThrowMany(7, 0.0);

        Assert.Equal(["", "", "1 2 3", "", "", "", "5 6 7", "", "", "8 9 10", "11"], Numbers(play));
    }

    [Fact]
    public void Summary_BlockEndsWithoutAShot_TheRestIsToldWithItsEnd()
    {
        var play = Summary(5, """ "minutes": 2 """);
        play.ThrowMany(3, 1.0);
        play.Tick();

        Assert.Equal(BlockEndReason.Minutes, play.Ended.Why);
        Assert.Equal([1, 2, 3], play.Ended.Told!.Results.Select(told => told.Number));
    }

    [Fact]
    public void None_NothingIsTold_EverythingIsInTheEvents()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 4 }, "feedback": { "when": "none" } """));
        play.ThrowMany(4, 1.25);

        Assert.All(play.Told, told => Assert.Empty(told.Results));
        Assert.Null(play.Ended.Told);
        Assert.All(play.Graded, shot => Assert.Equal(BoardOffset.FromBoards(1.25), shot.Targets[0].Miss));
    }

    [Fact]
    public void TestBlock_NoFeedbackGiven_TellsNothing()
    {
        var play = Play.Begun(
            """{ "name": "t", "kind": "test", "aims": [{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 }], "order": { "kind": "serial" }, "until": { "shots": 2 } }""");
        play.ThrowMany(2, 0.0);

        Assert.All(play.Told, told => Assert.Empty(told.Results));
    }

    private static Play Fading(double first, double last, int shots) => Play.Begun(Play.OneTarget(FormattableString.Invariant(
        $$""" "until": { "shots": {{shots}} }, "feedback": { "when": "fading", "firstShare": {{first}}, "lastShare": {{last}} } """)));

    private static Play Summary(int every, string until) =>
        Play.Begun(Play.OneTarget($$""" "until": { {{until}} }, "feedback": { "when": "summary", "everyShots": {{every}} } """));

    private static List<string> Numbers(Play play) => [.. play.Told.Select(told => string.Join(' ', told.Results.Select(one => one.Number)))];
}
