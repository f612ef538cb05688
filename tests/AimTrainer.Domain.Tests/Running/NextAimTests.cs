namespace AimTrainer.Domain.Tests;

/// <summary>What comes after the next shot, where that can be known; checked against what is then shown.</summary>
public sealed class NextAimTests
{
    private const string Two =
        """{ "name": "ten", "board": 10, "feet": 15, "widthBoards": 3 }, { "name": "fifteen", "board": 15, "feet": 15, "widthBoards": 3 }""";

    private const string Until = """ "until": { "shots": 12 } """;

    [Theory]
    [InlineData(""" "kind": "serial" """)]
    [InlineData(""" "kind": "blocked", "shotsEach": 2 """)]
    [InlineData(""" "kind": "random", "seed": 3 """)]
    public void Next_OrderThatHangsOnNoResult_IsWhatIsThenShown(string order)
    {
        var play = Play.Begun(Play.Block(Two, $$""" "order": { {{order}} }, {{Until}} """));
        for (var shot = 0; shot < 11; shot++)
        {
            var next = play.State.Next;
            play.Throw(shot % 2 == 0 ? 0 : 5);
            Assert.Equal(play.Shown, next);
        }
    }

    [Fact]
    public void Next_LastShotOfTheBlock_IsNotKnown()
    {
        var play = Play.Begun(Play.Block(Two, """ "order": { "kind": "serial" }, "until": { "shots": 2 } """));
        play.Throw(0);
        Assert.Null(play.State.Next);
    }

    [Fact]
    public void Next_RowOfHoldsOneShort_IsNotKnown()
    {
        var play = Play.Begun(Play.Block(Two, """ "order": { "kind": "serial" }, "until": { "shots": 20, "hitsInARow": 2 } """));
        Assert.NotNull(play.State.Next);
        play.Throw(0);
        Assert.Null(play.State.Next);
    }

    [Fact]
    public void Next_WalkAfterHolds_IsKnownOnlyWhereAHoldDoesNotMoveIt()
    {
        var play = Play.Begun(Play.Block(
            """{ "name": "ten", "board": 10, "feet": 15, "widthBoards": 3 }""",
            """ "order": { "kind": "walk", "to": { "board": 20 }, "moveBoards": 2, "afterHolds": 2 }, "until": { "shots": 50 } """));
        Assert.Equal(play.Shown, play.State.Next);
        play.Throw(0);
        Assert.Null(play.State.Next);
    }

    [Fact]
    public void Next_WalkAfterShots_IsItsNextPlace()
    {
        var play = Play.Begun(Play.Block(
            """{ "name": "ten", "board": 10, "feet": 15, "widthBoards": 3 }""",
            """ "order": { "kind": "walk", "to": { "board": 20 }, "moveBoards": 2, "everyShots": 1 }, "until": { "shots": 50 } """));
        var next = play.State.Next;
        Assert.Equal(12, next!.Targets[0].Target.Centre.Boards);
        play.Throw(4);
        Assert.Equal(play.Shown, next);
    }

    [Fact]
    public void Next_RepeatedAim_IsWhatTheOrderGoesOnWith()
    {
        var play = Play.Begun(Play.Block(Two, $$""" "order": { "kind": "serial" }, {{Until}} """));
        play.Throw(0);
        var scheduled = play.Shown;
        play.Repeat(Scope.Aim);
        Assert.NotEqual(scheduled, play.Shown);
        Assert.Equal(scheduled, play.State.Next);
    }

    [Fact]
    public void Next_NoBlock_IsNull()
    {
        var play = Play.Waiting(Play.Drill(Play.Block(Two, $$""" "order": { "kind": "serial" }, {{Until}} """)));
        Assert.Null(play.State.Next);
    }
}
