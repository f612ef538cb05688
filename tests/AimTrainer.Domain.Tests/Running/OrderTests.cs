namespace AimTrainer.Domain.Tests;

public class OrderTests
{
    private const string Three =
        """
        { "name": "a", "board": 5, "feet": 15, "widthBoards": 3 }, { "name": "b", "board": 10, "feet": 15, "widthBoards": 3 },
        { "name": "c", "board": 15, "feet": 15, "widthBoards": 3 }
        """;

    private const string Line =
        """
        { "name": "line", "line": [
          { "name": "near", "board": 10, "feet": 15, "widthBoards": 3 },
          { "name": "far", "board": 8, "feet": 40, "widthBoards": 5, "walkRatio": 0.5 }] }
        """;

    [Fact]
    public void Blocked_TwoShotsEach_GoesRoundInRows()
    {
        Assert.Equal("aabbccaab", Sequence(""" "order": { "kind": "blocked", "shotsEach": 2 }, "until": { "shots": 9 } """));
    }

    [Fact]
    public void Serial_ThreeAims_TakesTurns()
    {
        Assert.Equal("abcabcabc", Sequence(""" "order": { "kind": "serial" }, "until": { "shots": 9 } """));
    }

    [Fact]
    public void Random_SameSeed_SameSequence()
    {
        const string Order = """ "order": { "kind": "random", "longestRun": 2 }, "until": { "shots": 60 } """;

        Assert.Equal(Sequence(Order), Sequence(Order));
        Assert.NotEqual(Sequence(Order), Sequence(Order, seed: 8));
    }

    [Fact]
    public void Random_DrillHasItsOwnSeed_SessionsSeedDoesNotMatter()
    {
        const string Order = """ "order": { "kind": "random", "longestRun": 2, "seed": 3 }, "until": { "shots": 60 } """;

        Assert.Equal(Sequence(Order, seed: 1), Sequence(Order, seed: 2));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Random_LongestRun_IsReachedAndNeverExceeded(int longest)
    {
        var sequence = Sequence($$""" "order": { "kind": "random", "longestRun": {{longest}} }, "until": { "shots": 600 } """);

        Assert.Equal(longest, LongestRun(sequence));
    }

    [Fact]
    public void Random_ThreeAims_EachComesAboutAsOften()
    {
        // 3,000 draws, nearly even: one aim's count has a standard deviation below 26, so 130 is five of them.
        var sequence = Sequence(""" "order": { "kind": "random", "longestRun": 2 }, "until": { "shots": 3000 } """);

        Assert.All("abc", name => Assert.InRange(sequence.Count(letter => letter == name), 870, 1130));
    }

    [Fact]
    public void Random_BlockRepeated_IsAnotherSequence()
    {
        var play = Play.Begun(Play.Block(Three, """ "order": { "kind": "random" }, "until": { "shots": 30 } """));
        play.ThrowMany(29, 0);
        play.Repeat(Scope.Block);
        play.ThrowMany(29, 0);

        Assert.NotEqual(Names(play.Graded.Take(29)), Names(play.Graded.Skip(29)));
    }

    [Fact]
    public void Walk_AfterShots_LastStepIsShorterAndDownlaneFollowsByRatio()
    {
        var play = Play.Begun(Play.Block(Line, """ "order": { "kind": "walk", "to": { "board": 15 }, "moveBoards": 2, "everyShots": 2 } """));
        while (play.State.Phase == SessionPhase.Throwing)
        {
            play.Throw(9);
        }

        Assert.Equal([10, 10, 12, 12, 14, 14, 15, 15], play.Graded.Select(shot => shot.Targets[0].Target.Centre.Boards));
        Assert.Equal([8, 8, 9, 9, 10, 10, 10.5, 10.5], play.Graded.Select(shot => shot.Targets[1].Target.Centre.Boards));
        Assert.Equal([1, 1, 2, 2, 3, 3, 4, 4], play.Graded.Select(shot => shot.Place));
        Assert.Equal(BlockEndReason.WalkDone, play.EndOf(0));
    }

    [Fact]
    public void Walk_AfterHolds_MovesOnlyWhenTheWholeLineWasHeld()
    {
        var play = Play.Begun(Play.Block(
            Line, """ "order": { "kind": "walk", "to": { "board": 14 }, "moveBoards": 2, "afterHolds": 2 }, "until": { "shots": 50 } """));
        play.Throw(0, 0);
        play.Throw(0, 9);
        play.Throw(0, null);
        Assert.Equal(1, play.State.Place);

        play.Throw(0, 0);

        Assert.Equal(2, play.State.Place);
    }

    [Fact]
    public void Walk_ToAndFro_TurnsAtBothEnds()
    {
        var play = Play.Begun(Play.Block(
            Line, """ "order": { "kind": "walk", "to": { "board": 13 }, "moveBoards": 2, "everyShots": 1, "atEnd": "turn" }, "until": { "shots": 9 } """));
        play.ThrowMany(9, 0.0);

        Assert.Equal([10, 12, 13, 12, 10, 12, 13, 12, 10], play.Graded.Select(shot => shot.Targets[0].Target.Centre.Boards));
        Assert.Equal(BlockEndReason.Shots, play.EndOf(0));
    }

    [Fact]
    public void Walk_TowardTheHandSide_MovesOutward()
    {
        var play = Play.Begun(Play.Block(Line, """ "order": { "kind": "walk", "to": { "board": 7 }, "moveBoards": 2, "everyShots": 1 } """));
        play.ThrowMany(3, 0.0);

        Assert.Equal([10, 8, 7], play.Graded.Select(shot => shot.Targets[0].Target.Centre.Boards));
    }

    [Theory]
    [InlineData("stop", BlockEndReason.WalkDone, 2)]
    [InlineData("turn", BlockEndReason.Shots, 5)]
    public void Walk_EndIsTheStart_OnePlaceOnly(string atEnd, BlockEndReason why, int shots)
    {
        var play = Play.Begun(Play.Block(
            Line, $$""" "order": { "kind": "walk", "to": { "board": 10 }, "moveBoards": 2, "everyShots": 2, "atEnd": "{{atEnd}}" }, "until": { "shots": 5 } """));
        while (play.State.Phase == SessionPhase.Throwing)
        {
            play.Throw(0.0);
        }

        Assert.Equal(why, play.EndOf(0));
        Assert.Equal(shots, play.State.LastNumber);
    }

    private static string Sequence(string rest, ulong seed = 7)
    {
        var play = Play.Begun(Play.Drill(Play.Block(Three, rest)), Play.Setup with { Seed = seed });
        while (play.State.Phase == SessionPhase.Throwing)
        {
            play.Throw(0.0);
        }

        return Names(play.Graded);
    }

    private static string Names(IEnumerable<GradedShot> shots) => string.Concat(shots.Select(shot => shot.Aim));

    private static int LongestRun(string sequence)
    {
        var (longest, run) = (1, 1);
        for (var i = 1; i < sequence.Length; i++)
        {
            run = sequence[i] == sequence[i - 1] ? run + 1 : 1;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}
