namespace AimTrainer.Domain.Tests;

public class ChangeTargetTests
{
    private const string Line =
        """
        { "name": "line", "line": [
          { "name": "near", "board": 10, "feet": 15, "widthBoards": 3 },
          { "name": "far", "board": 8, "feet": 40, "widthBoards": 5 }] }
        """;

    private const string Order = """ "order": { "kind": "serial" }, "until": { "shots": 20 } """;

    [Fact]
    public void Width_IsShownAndGradedAndTold()
    {
        var play = Play.Begun(Play.Block(Line, Order));
        var before = play.Shown.Targets[1].Target;

        var events = play.Change("far", width: 2);

        var after = play.Shown.Targets[1].Target;
        Assert.Equal([new SessionEvent.TargetChanged("far", before, after), new SessionEvent.AimShown(1, play.Shown, 0)], events);
        Assert.Equal(2, after.Width.Boards);
        Assert.Equal(3, play.Shown.Targets[0].Target.Width.Boards);
        Assert.False(play.Throw(0, 1.5).Held);
    }

    [Fact]
    public void CentreAndDistance_StayUntilTheBlockIsOver()
    {
        var play = Play.Begun(Play.Block(Line, Order));
        play.Change("far", centre: 6, feet: 42);
        play.ThrowMany(3, 0.0);

        Assert.All(play.Graded, shot => Assert.Equal((6.0, 42.0), (shot.Targets[1].Target.Centre.Boards, shot.Targets[1].Target.Distance.Value)));
    }

    [Fact]
    public void Centre_OfAWalkingLine_WalksOnFromThere()
    {
        var play = Play.Begun(Play.Block(
            """{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 }""", """ "order": { "kind": "walk", "to": { "board": 14 }, "moveBoards": 2, "everyShots": 1 } """));
        play.Change("spot", centre: 11);
        play.ThrowMany(3, 0.0);

        Assert.Equal([11, 13, 15], play.Graded.Select(shot => shot.Targets[0].Target.Centre.Boards));
    }

    [Fact]
    public void Centre_WalkHeldAtTheEdge_IsExactlyWhatWasAskedFor()
    {
        var play = Play.Begun(Play.Block(
            """{ "name": "spot", "board": 36, "feet": 15, "widthBoards": 3 }""", """ "order": { "kind": "walk", "to": { "board": 38 }, "moveBoards": 2, "everyShots": 1 } """));
        play.Change("spot", centre: 39);
        play.Throw(0.0);
        Assert.Equal(39.5, play.Shown.Targets[0].Target.Centre.Boards);

        play.Change("spot", centre: 37);

        Assert.Equal(37, play.Shown.Targets[0].Target.Centre.Boards);
    }

    [Theory]
    [InlineData(0.9, "a width of 0.9 boards is outside this block's limits: give 1 to 9")]
    [InlineData(9.1, "a width of 9.1 boards is outside this block's limits: give 1 to 9")]
    public void Width_OutsideTheRulesLimits_IsRefused(double width, string why)
    {
        var play = Play.Begun(Play.Block(Line, Order + """, "sizing": { "kind": "staircase", "hits": 1, "misses": 1, "stepBoards": 1 } """));

        Assert.Equal(why, play.Refusal(Play.Changing("near", width: width)));
    }

    [Theory]
    [InlineData("far", 14.0, "give more than 15 ft, where \"near\" is")]
    [InlineData("far", 15.0, "give more than 15 ft, where \"near\" is")]
    [InlineData("near", 40.0, "give less than 40 ft, where \"far\" is")]
    [InlineData("far", 60.5, "60.5 ft is not on the lane: give a distance of 0 to 60 ft")]
    public void Distance_OutOfOrderOrOffTheLane_IsRefused(string target, double feet, string why)
    {
        var play = Play.Begun(Play.Block(Line, Order));

        Assert.EndsWith(why, play.Refusal(Play.Changing(target, feet: feet)), StringComparison.Ordinal);
    }

    [Fact]
    public void Refusals_SayWhatToDo()
    {
        var play = Play.Begun(Play.Block(Line, Order));

        Assert.Equal("no target \"middle\" is shown; shown: \"near\", \"far\"", play.Refusal(Play.Changing("middle", width: 2)));
        Assert.Equal("say what to change: width, centre or distance", play.Refusal(Play.Changing("near")));
        Assert.Equal("board 40 is not on the lane: give a centre of 0.5 to 39.5", play.Refusal(Play.Changing("near", centre: 40)));
    }
}
