namespace AimTrainer.Domain.Tests;

public class VoidAndCorrectTests
{
    private const string Two =
        """{ "name": "a", "board": 5, "feet": 15, "widthBoards": 3 }, { "name": "b", "board": 10, "feet": 15, "widthBoards": 3 }""";

    private const string Ladder =
        """ "sizing": { "kind": "ladder", "widthsBoards": [5, 4, 3, 2], "hits": 1, "misses": 1, "ofLast": 1 }, "order": { "kind": "serial" } """;

    private const string Spot = """{ "name": "spot", "board": 10, "feet": 15 }""";

    [Fact]
    public void Void_ItsAimIsThrownAgainAndItCountsNowhere()
    {
        var play = Play.Begun(Play.Block(Two, """ "order": { "kind": "serial" }, "until": { "shots": 4 } """));
        play.ThrowMany(2, 0.0);
        var events = play.Void(1);

        Assert.Equal(new SessionEvent.ShotVoided(1, "foul"), events[0]);
        Assert.Equal("a", play.Shown.Name);
        Assert.Equal(1, play.State.Throws);
        Assert.Equal("foul", play.State.FindShot(1)!.VoidReason);
        play.ThrowMany(3, 0.0);
        Assert.Equal("abaab", string.Concat(play.Graded.Select(shot => shot.Aim)));
        Assert.Equal([1, 2, 3, 4, 5], play.Graded.Select(shot => shot.Number));
        Assert.Equal(BlockEndReason.Shots, play.EndOf(0));
    }

    [Fact]
    public void Void_SizingIsWorkedOutAsIfItHadNeverBeen()
    {
        var play = Play.Begun(Play.Block(Spot, Ladder + """, "until": { "shots": 20 } """));
        play.ThrowMany(2, 0.0); // 5, 4, then 3
        play.Throw(9.0); // back to 4
        play.Void(3);

        Assert.Equal(3, play.Shown.Targets[0].Target.Width.Boards);
    }

    [Fact]
    public void Void_MissBetweenHolds_RowIsWholeAgainAndEndsTheBlock()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 20, "hitsInARow": 4 } """));
        play.ThrowMany(2, 0.0);
        play.Throw(9.0);
        play.ThrowMany(2, 0.0);

        play.Void(3);

        Assert.Equal(BlockEndReason.HitsInARow, play.EndOf(0));
    }

    [Fact]
    public void Void_WidthSetByHand_StaysSetByHand()
    {
        var play = Play.Begun(Play.Block(Spot, Ladder + """, "until": { "shots": 20 } """));
        play.Throw(0.0);
        play.Change("spot", width: 5);
        play.Throw(0.0); // 4
        play.Void(1);

        Assert.Equal(4, play.Shown.Targets[0].Target.Width.Boards);
    }

    [Fact]
    public void Void_ShotOfAnEarlierBlock_MarksItAndLeavesTheRest()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 1 } """, "one"), Play.OneTarget(""" "until": { "shots": 2 } """, "two"));
        play.ThrowMany(2, 0.0);

        Assert.Equal(new SessionEvent.ShotVoided(1, "foul"), Assert.Single(play.Void(1)));
        Assert.Equal(1, play.State.Throws);
    }

    [Fact]
    public void Void_Refusals_SayWhatToDo()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 5 } """));
        Assert.Equal("there is no shot 1: none has been thrown", play.Refusal(at => new SessionInput.VoidShot(at, 1, "foul")));
        play.ThrowMany(2, 0.0);

        Assert.Equal("say why the shot does not count", play.Refusal(at => new SessionInput.VoidShot(at, 1, " ")));
        Assert.Equal("there is no shot 3: give a number from 1 to 2", play.Refusal(at => new SessionInput.VoidShot(at, 3, "foul")));
        play.Void(2);
        Assert.Equal("shot 2 is void already: foul", play.Refusal(at => new SessionInput.VoidShot(at, 2, "again")));
    }

    [Fact]
    public void Void_AtAWalk_StaysLongerAtItsPlace()
    {
        var play = Play.Begun(Play.Block(
            """{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 }""", """ "order": { "kind": "walk", "to": { "board": 14 }, "moveBoards": 2, "everyShots": 2 } """));
        play.ThrowMany(3, 0.0); // two at the first place, one at the second
        play.Void(3);
        play.Throw(0.0);
        Assert.Equal(2, play.State.Place);

        play.Throw(0.0);

        Assert.Equal(3, play.State.Place);
    }

    [Fact]
    public void Void_WalkSkippedBackToAPlace_CountsOnlyThisVisit()
    {
        var play = Play.Begun(Play.Block(
            """{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 }""",
            """ "order": { "kind": "walk", "to": { "board": 12 }, "moveBoards": 2, "everyShots": 3, "atEnd": "turn" }, "until": { "shots": 30 } """));
        play.ThrowMany(2, 0.0); // first place
        play.Skip(Scope.Aim); // second
        play.Skip(Scope.Aim); // first again, nothing thrown in this visit
        play.ThrowMany(2, 0.0);
        play.Void(4);
        play.Throw(0.0);
        Assert.Equal(1, play.State.Place);

        play.Throw(0.0);

        Assert.Equal(2, play.State.Place);
    }

    [Fact]
    public void Correct_BothValuesAreKeptAndItIsGradedAgainstWhatWasShown()
    {
        var play = Play.Begun(Play.Block(Spot, Ladder + """, "until": { "shots": 20 } """));
        var first = play.Throw(2.4); // held at 5 boards: 4 next
        play.Throw(0.0); // 3 next

        var events = play.Correct(1, SampleShot.Of([(15, 12.6)]));

        var corrected = Assert.IsType<SessionEvent.ShotCorrected>(events[0]);
        Assert.Equal(first, corrected.Before);
        Assert.Equal(first.At, corrected.After.At);
        Assert.Equal(first.Targets[0].Target, corrected.After.Targets[0].Target);
        Assert.Equal((true, false), (corrected.Before.Held, corrected.After.Held));
        Assert.Equal(corrected.After, play.State.FindShot(1));
        Assert.Equal(4, play.Shown.Targets[0].Target.Width.Boards); // missed at the widest, then one hit
    }

    [Fact]
    public void Correct_MissBecomesAHold_TheWalkGoesOnAtOnce()
    {
        var play = Play.Begun(Play.Block(
            """{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 }""",
            """ "order": { "kind": "walk", "to": { "board": 12 }, "moveBoards": 2, "afterHolds": 2 }, "until": { "shots": 30 } """));
        play.Throw(0.0);
        play.Throw(9.0);

        play.Correct(2, SampleShot.Of([(15, 10)]));
        Assert.Equal(2, play.State.Place);

        play.Throw(0.0);
        play.Throw(9.0);
        play.Correct(4, SampleShot.Of([(15, 12)]));
        Assert.Equal(BlockEndReason.WalkDone, play.EndOf(0));
    }

    [Fact]
    public void Correct_VoidShot_StaysVoid()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 5 } """));
        play.Throw(0.0);
        play.Void(1);

        Assert.Single(play.Correct(1, SampleShot.Of([(15, 11)])));
        Assert.Equal("foul", play.State.FindShot(1)!.VoidReason);
        Assert.Equal(0, play.State.Throws);
    }

    [Fact]
    public void Correct_NoSuchShot_IsRefused()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 5 } """));
        play.Throw(0.0);

        Assert.Equal("there is no shot 2: give a number from 1 to 1", play.Refusal(at => new SessionInput.CorrectShot(at, 2, SampleShot.Of([]))));
    }

    [Fact]
    public void Void_ManyTimes_OldStateIsUntouched()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 5 } """));
        play.ThrowMany(2, 0.0);
        var before = play.State;
        play.Void(1);

        Assert.Null(before.FindShot(1)!.VoidReason);
        Assert.Equal(2, before.Throws);
    }
}
