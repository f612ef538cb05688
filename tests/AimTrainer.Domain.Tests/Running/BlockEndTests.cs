namespace AimTrainer.Domain.Tests;

public class BlockEndTests
{
    [Fact]
    public void Shots_Unmeasured_CountAsThrown()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 3 } """));
        play.Throw(0.0);
        play.Throw((double?)null);
        Assert.Equal(SessionPhase.Throwing, play.State.Phase);

        play.Throw(9.0);

        Assert.Equal(BlockEndReason.Shots, play.EndOf(0));
        Assert.Equal(new SessionEvent.SessionEnded("all blocks were thrown"), play.Events[^1]);
    }

    [Fact]
    public void HitsInARow_MissBreaksAndUnknownDoesNot()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 30, "hitsInARow": 3 } """));
        play.ThrowMany(2, 0);
        play.Throw(3.0);
        play.ThrowMany(2, 0);
        play.Throw((double?)null);
        Assert.Equal(SessionPhase.Throwing, play.State.Phase);

        play.Throw(0.0);

        Assert.Equal(BlockEndReason.HitsInARow, play.EndOf(0));
    }

    [Fact]
    public void WidthReached_EveryTargetMustBeNarrowEnough()
    {
        const string Ladder = """ "sizing": { "kind": "ladder", "widthsBoards": [4, 2], "hits": 1, "misses": 1, "ofLast": 1 } """;
        var play = Play.Begun(Play.Block(
            """{ "name": "a", "board": 5, "feet": 15 }, { "name": "b", "board": 10, "feet": 15 }""",
            Ladder + """, "order": { "kind": "serial" }, "until": { "shots": 30, "widthBoards": 2 } """));
        play.Throw(0.0);
        Assert.Equal(SessionPhase.Throwing, play.State.Phase);

        play.Throw(0.0);

        Assert.Equal(BlockEndReason.WidthReached, play.EndOf(0));
    }

    [Fact]
    public void Minutes_PausesTakenOut_EndAtTheTick()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "minutes": 5 } """));
        play.Wait(TimeSpan.FromMinutes(4));
        play.Pause(); // 4:30
        play.Wait(TimeSpan.FromMinutes(60));
        play.Resume();
        play.Wait(TimeSpan.FromSeconds(-1));
        play.Tick(); // 4:59
        Assert.Equal(SessionPhase.Throwing, play.State.Phase);

        play.Wait(TimeSpan.FromSeconds(-29));
        play.Tick(); // 5:00

        Assert.Equal(BlockEndReason.Minutes, play.EndOf(0));
    }

    [Fact]
    public void Minutes_ShotAfterTime_IsGradedAgainstWhatWasShownAndEndsTheBlock()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "minutes": 1 } """));
        play.Wait(TimeSpan.FromMinutes(2));

        var graded = play.Throw(0.0);

        Assert.True(graded.Held);
        Assert.Equal(BlockEndReason.Minutes, play.EndOf(0));
    }

    [Fact]
    public void Minutes_VoidInALongPause_TimeOfThePauseStillDoesNotCount()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "minutes": 5 } """));
        play.Throw(0.0);
        play.Pause();
        play.Wait(TimeSpan.FromMinutes(60));

        play.Void(1);

        Assert.Equal(SessionPhase.Paused, play.State.Phase);
        Assert.Null(play.EndOf(0));
    }

    [Fact]
    public void Minutes_NextBlock_HasItsOwn()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "minutes": 1 } """, "one"), Play.OneTarget(""" "until": { "minutes": 1 } """, "two"));
        play.Wait(TimeSpan.FromMinutes(1));
        play.Tick();
        play.Tick();

        Assert.Equal(1, play.State.BlockIndex);
    }

    [Fact]
    public void Minutes_ClockWentBack_BlockGoesOn()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "minutes": 1 } """));
        play.Pause();
        play.Wait(TimeSpan.FromHours(-2));
        play.Resume();
        play.Tick();

        Assert.Equal(SessionPhase.Throwing, play.State.Phase);
    }

    [Fact]
    public void Tick_NothingOver_NothingHappens()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "minutes": 5, "shots": 3, "hitsInARow": 1 } """));

        Assert.Empty(play.Do(at => new SessionInput.ClockTick(at)));
    }
}
