namespace AimTrainer.Domain.Tests;

public class CoachTests
{
    private const string Two =
        """{ "name": "a", "board": 5, "feet": 15, "widthBoards": 3 }, { "name": "b", "board": 10, "feet": 15, "widthBoards": 3 }""";

    private const string Walk =
        """
        "order": { "kind": "walk", "to": { "board": 14 }, "moveBoards": 2, "everyShots": 2 }
        """;

    private const string Spot = """{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 }""";

    [Fact]
    public void Begin_ShowsTheFirstTarget()
    {
        var play = Play.Waiting(Play.Drill(Play.OneTarget(""" "until": { "shots": 3 } """)));

        var events = play.Do(new SessionInput.Begin(play.Now));

        Assert.Equal(new SessionEvent.BlockBegan(0, 0, "block", BlockKind.Training, 1), events[0]);
        Assert.Equal(new SessionEvent.AimShown(1, play.Shown, 0), events[1]);
        Assert.Equal("the session has begun already: throw", play.Refusal(at => new SessionInput.Begin(at)));
    }

    [Fact]
    public void Waiting_ShotsAreSetAsideAndTheRestRefused()
    {
        var play = Play.Waiting(Play.Drill(Play.OneTarget(""" "until": { "shots": 3 } """)));
        var shot = SampleShot.Of([(15, 10)]);

        Assert.Equal(new SessionEvent.ShotSetAside(shot, "the session had not begun"), Assert.Single(play.Throw(shot)));
        play.Do(at => new SessionInput.TakeNote(at, " arm feels fine "));
        Assert.Equal(new SessionEvent.NoteTaken("arm feels fine"), play.Events[^1]);
        Assert.All<Func<DateTimeOffset, SessionInput>>(
            [
                at => new SessionInput.Pause(at), at => new SessionInput.Resume(at), at => new SessionInput.Skip(at, Scope.Aim),
                at => new SessionInput.Repeat(at, Scope.Block), at => new SessionInput.VoidShot(at, 1, "foul"),
                at => new SessionInput.CorrectShot(at, 1, shot), Play.Changing("spot", width: 2),
            ],
            input => Assert.Equal("the session has not begun: begin it first", play.Refusal(input)));
    }

    [Fact]
    public void Pause_ShotsAreKeptAndNotCounted()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 3 } """));
        play.Pause();
        var shot = SampleShot.Of([(15, 10)]);

        Assert.Equal(new SessionEvent.ShotSetAside(shot, "the session was paused"), Assert.Single(play.Throw(shot)));
        Assert.Equal("the session is paused already: resume it to go on", play.Refusal(at => new SessionInput.Pause(at)));
        play.Resume();
        Assert.Equal("the session is not paused: shots count already", play.Refusal(at => new SessionInput.Resume(at)));
        Assert.Equal(1, play.Throw(0.0).Number);
    }

    [Fact]
    public void Pause_BlockSkipped_StaysPausedAndTheNextBlocksMinutesWait()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 3 } """, "one"), Play.OneTarget(""" "until": { "minutes": 2 } """, "two"));
        play.Pause();
        play.Wait(TimeSpan.FromMinutes(10));
        play.Skip(Scope.Block);
        Assert.Equal(SessionPhase.Paused, play.State.Phase);

        play.Wait(TimeSpan.FromMinutes(30));
        play.Resume();
        play.Tick();

        Assert.Equal(SessionPhase.Throwing, play.State.Phase);
        Assert.Equal(1, play.State.BlockIndex);
        play.Wait(TimeSpan.FromMinutes(1));
        play.Tick();
        Assert.Equal(BlockEndReason.Minutes, play.EndOf(1));
    }

    [Fact]
    public void End_InABlock_EndsBothAndNothingFollows()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 3 } """));
        play.Throw(0.0);
        play.Do(at => new SessionInput.End(at, " rain on the approach "));

        Assert.Equal(BlockEndReason.SessionEnded, play.EndOf(0));
        Assert.Equal(new SessionEvent.SessionEnded("rain on the approach"), play.Events[^1]);
        Assert.Null(play.State.Shown);
        Assert.All<Func<DateTimeOffset, SessionInput>>(
            [
                at => new SessionInput.ShotThrown(at, SampleShot.Of([])), at => new SessionInput.Begin(at), at => new SessionInput.Resume(at),
                at => new SessionInput.End(at, ""), at => new SessionInput.Skip(at, Scope.Aim), at => new SessionInput.ClockTick(at),
                at => new SessionInput.Repeat(at, Scope.Block),
            ],
            input => Assert.Equal("the session is over: start a new one (its shots can still be voided or corrected)", play.Refusal(input)));
    }

    [Fact]
    public void CorrectAndVoid_AfterTheEnd_ChangeTheRecordAndShowNothing()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 2 } """));
        play.Throw(0.0);
        play.Throw(5.0);
        Assert.Equal(SessionPhase.Ended, play.State.Phase);

        var right = SampleShot.Of([(15, 10)]);
        var corrected = Assert.IsType<SessionEvent.ShotCorrected>(Assert.Single(play.Do(at => new SessionInput.CorrectShot(at, 2, right))));
        Assert.Equal((false, true), (corrected.Before.Held, corrected.After.Held));
        Assert.Equal(new SessionEvent.ShotVoided(1, "foul"), Assert.Single(play.Do(at => new SessionInput.VoidShot(at, 1, "foul"))));
        Assert.Equal(new SessionEvent.NoteTaken("late"), Assert.Single(play.Do(at => new SessionInput.TakeNote(at, "late"))));
        Assert.Equal([null, "foul"], play.State.ShotsOfRun().Select(shot => shot.VoidReason));
        Assert.Null(play.State.Shown);
    }

    [Fact]
    public void End_WhileWaiting_EndsWithoutABlock()
    {
        var play = Play.Waiting(Play.Drill(Play.OneTarget(""" "until": { "shots": 3 } """)));

        Assert.Equal(new SessionEvent.SessionEnded("ended by hand"), Assert.Single(play.Do(at => new SessionInput.End(at, " "))));
    }

    [Fact]
    public void SkipAim_Serial_ShowsTheNextAndCountsNothing()
    {
        var play = Play.Begun(Play.Block(Two, """ "order": { "kind": "serial" }, "until": { "shots": 2 } """));

        var events = play.Skip(Scope.Aim);

        Assert.Equal([new SessionEvent.AimSkipped("a"), new SessionEvent.AimShown(1, play.Shown, 0)], events);
        Assert.Equal("b", play.Shown.Name);
        Assert.Equal(0, play.State.Throws);
    }

    [Fact]
    public void SkipAim_Blocked_PassesOverTheRestOfItsShots()
    {
        var play = Play.Begun(Play.Block(Two, """ "order": { "kind": "blocked", "shotsEach": 5 }, "until": { "shots": 20 } """));
        play.ThrowMany(2, 0.0);
        play.Skip(Scope.Aim);
        play.ThrowMany(6, 0.0);

        Assert.Equal("aabbbbba", string.Concat(play.Graded.Select(shot => shot.Aim)));
    }

    [Fact]
    public void SkipAim_Walk_GoesToTheNextPlaceAndAtTheLastEnds()
    {
        var play = Play.Begun(Play.Block(Spot, Walk));
        play.Throw(0.0);
        play.Skip(Scope.Aim);
        Assert.Equal(2, play.State.Place);
        play.Throw(0.0);
        Assert.Equal(2, play.State.Place);

        play.Skip(Scope.Aim);
        play.Skip(Scope.Aim);

        Assert.Equal(BlockEndReason.WalkDone, play.EndOf(0));
    }

    [Fact]
    public void SkipBlock_GoesToTheNextAndAtTheLastEnds()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 3 } """, "one"), Play.OneTarget(""" "until": { "shots": 3 } """, "two"));
        play.Skip(Scope.Block);
        Assert.Equal(1, play.State.BlockIndex);

        play.Skip(Scope.Block);

        Assert.Equal([BlockEndReason.Skipped, BlockEndReason.Skipped], [play.EndOf(0), play.EndOf(1)]);
        Assert.Equal(SessionPhase.Ended, play.State.Phase);
    }

    [Fact]
    public void RepeatAim_ShowsTheLastAgainThenTheOrderGoesOn()
    {
        var play = Play.Begun(Play.Block(Two, """ "order": { "kind": "serial" }, "until": { "shots": 5 } """));
        Assert.Contains("nothing has been thrown", play.Refusal(at => new SessionInput.Repeat(at, Scope.Aim)), StringComparison.Ordinal);
        play.Throw(0.0);
        play.Repeat(Scope.Aim);
        play.ThrowMany(3, 0.0);

        Assert.Equal("aaba", string.Concat(play.Graded.Select(shot => shot.Aim)));
    }

    [Fact]
    public void RepeatAim_Walk_SaysWhatToDoInstead()
    {
        var play = Play.Begun(Play.Block(Spot, Walk));
        play.Throw(0.0);

        Assert.Contains("void a shot", play.Refusal(at => new SessionInput.Repeat(at, Scope.Aim)), StringComparison.Ordinal);
    }

    [Fact]
    public void RepeatBlock_StartsAfreshAndKeepsTheShots()
    {
        var play = Play.Begun(Play.Block(
            Spot.Replace(", \"widthBoards\": 3", "", StringComparison.Ordinal),
            """ "sizing": { "kind": "ladder", "widthsBoards": [4, 2], "hits": 1, "misses": 1, "ofLast": 1 }, "order": { "kind": "serial" }, "until": { "shots": 5 } """));
        play.Throw(0.0);
        play.Change("spot", centre: 12);

        var events = play.Repeat(Scope.Block);

        Assert.Equal(BlockEndReason.Repeated, play.EndOf(0));
        Assert.Equal(new SessionEvent.BlockBegan(1, 0, "block", BlockKind.Training, 2), events[1]);
        Assert.Equal((4.0, 10.0), (play.Shown.Targets[0].Target.Width.Boards, play.Shown.Targets[0].Target.Centre.Boards));
        Assert.Equal(0, play.State.Throws);
        Assert.Equal(2, play.Throw(0.0).Number);
        Assert.NotNull(play.State.FindShot(1));
    }

    [Fact]
    public void TakeNote_Empty_IsRefused()
    {
        var play = Play.Begun(Play.OneTarget(""" "until": { "shots": 3 } """));

        Assert.Equal("the note is empty: write something", play.Refusal(at => new SessionInput.TakeNote(at, " ")));
    }
}
