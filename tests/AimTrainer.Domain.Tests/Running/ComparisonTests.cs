using CsCheck;

namespace AimTrainer.Domain.Tests;

public class ComparisonTests
{
    [Fact]
    public void Alternate_AllGood_TakesTurnsAndMovesOnWithTheLine()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2 """);

        Assert.Equal("1ON ON 2ON ON", Thrown(play));
        Assert.Equal(BlockEndReason.Compared, play.Ended.Why);
    }

    [Fact]
    public void Mirrored_AllGood_GoesThereAndBack()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "mirrored", "goodThrowsEach": 4 """);

        Assert.Equal("1ON NO ON NO 2ON NO ON NO", Thrown(play));
    }

    [Fact]
    public void Blocks_TwoInARow_FinishesShortRowsToo()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "blocks", "throwsInARow": 2, "goodThrowsEach": 3 """);

        Assert.Equal("1OO NN ON 2OO NN ON", Thrown(play));
    }

    [Fact]
    public void Alternate_ABadThrow_KeepsTheTurnsAndIsMadeUpForAtTheEnd()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2, "firstTargetHeld": true """);

        var bad = play.Throw(4, 0);
        Assert.Equal("near missed, so it was thrown along another line", bad.Compared!.NotGood);
        Assert.Equal(["Old one 0/2", "New one 0/2"], Cells(play));
        play.Throw(0);
        play.Throw(0);
        play.Throw(0);
        Assert.Equal(["Old one 1/2", "New one 2/2"], Cells(play));
        Assert.Equal("Old one", play.State.Turn!.Due.Name);
        play.Throw(0);
        Assert.Equal(2, play.State.Turn!.Line);
    }

    [Fact]
    public void MostThrows_NothingGood_ComesToAnEndAllTheSame()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2, "mostThrowsEach": 3, "firstTargetHeld": true """);

        for (var i = 0; i < 12; i++)
        {
            play.Throw(9, 0);
        }

        Assert.Equal(BlockEndReason.Compared, play.Ended.Why);
        Assert.All(play.Graded, shot => Assert.False(shot.Compared!.IsGood));
    }

    [Fact]
    public void Check_NotItsTurn_IsPutInAndTheTurnComesAfterIt()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 3, "checkEvery": 4 """);

        // The fourth shot would be the new ball's: the check comes first. The last check comes although the old ball has its three.
        Assert.Equal("1ON OOc NN 2OOc NO NOc N", Thrown(play));
        Assert.Equal([4, 8, 12], play.Graded.Where(shot => shot.Compared!.IsCheck).Select(shot => shot.Number));
    }

    [Fact]
    public void Shot_NamesTheOtherBall_CountsForThatOneAndTheDueOneStaysDue()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2 """);

        var shot = ThrowWith(play, "new  ONE");
        Assert.Equal(("New one", "Old one", "other", true), (shot.Compared!.Ball, shot.Compared.Due, shot.Compared.Role, shot.Compared.IsOtherThanDue));
        Assert.True(shot.Compared.IsGood);
        Assert.Equal(["Old one 0/2", "New one 1/2"], Cells(play));
        Assert.Equal("Old one", play.State.Turn!.Due.Name);
    }

    [Fact]
    public void Shot_NamesABallThatIsNotCompared_CountsForNone()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2 """);

        var shot = ThrowWith(play, "Third");
        Assert.Equal(("Third", null, "Third is none of the balls compared"), (shot.Compared!.Ball, shot.Compared.Role, shot.Compared.NotGood));
        Assert.Equal(["Old one 0/2", "New one 0/2"], Cells(play));
        Assert.Equal("Old one", play.State.Turn!.Due.Name);
    }

    [Fact]
    public void Shot_FarTargetNotMeasured_IsNoGoodThrow()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2 """);

        Assert.Equal("far not measured, so where this ball goes is not known", play.Throw(0, null).Compared!.NotGood);
    }

    [Fact]
    public void Shot_SpeedLimitAndNoSpeedMeasured_IsNotKnownToBeGood()
    {
        var play = ComparisonPlay.Begun(
            """ "throwing": "alternate", "goodThrowsEach": 2 """, rest: """, "comparable": { "speedWithinMph": 1, "expect": { "speedMph": 17, "speedAt": "average" } }""");

        Assert.Equal("not known to be the same throw: speed not measured", play.Throw(0).Compared!.NotGood);
    }

    [Fact]
    public void Void_ShotOfThisLine_IsThrownAgainWithTheSameBall()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2 """);
        play.Throw(0);
        play.Throw(0);
        play.Void(2);

        Assert.Equal(("New one", 1), (play.State.Turn!.Due.Name, play.State.Turn.Line));
        Assert.Equal(["Old one 1/2", "New one 0/2"], Cells(play));
    }

    [Fact]
    public void Void_ShotOfAnEarlierLine_DoesNotGoBack()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 1 """);
        play.Throw(0);
        play.Throw(0);
        Assert.Equal(2, play.State.Turn!.Line);
        play.Void(1);

        Assert.Equal((2, "Old one"), (play.State.Turn!.Line, play.State.Turn.Due.Name));
        Assert.Equal(["Old one 0/1", "New one 0/1"], Cells(play));
    }

    [Fact]
    public void Correct_TheBoards_LeavesTheBallAsItWas()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2, "firstTargetHeld": true """);
        ThrowWith(play, "New one");
        play.Correct(1, Play.ShotAt(play.Shown, 5, 0));

        var shot = play.State.FindShot(1)!;
        Assert.Equal(("New one", false), (shot.Compared!.Ball, shot.Compared.IsGood));
        Assert.Equal(["Old one 0/2", "New one 0/2"], Cells(play));
    }

    [Fact]
    public void Correct_TheBall_MovesTheShotToIt()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2 """);
        play.Throw(0);
        play.Correct(1, Play.ShotAt(play.Shown, 0) with { Ball = "new one" });

        Assert.Equal(["Old one 0/2", "New one 1/2"], Cells(play));
        Assert.Equal("Old one", play.State.Turn!.Due.Name);
    }

    [Fact]
    public void Skip_Aim_GoesToTheNextLineAndEndsAfterTheLast()
    {
        var play = ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2 """);
        play.Throw(0);
        play.Skip(Scope.Aim);
        Assert.Equal((2, "Old one"), (play.State.Turn!.Line, play.State.Turn.Due.Name));
        play.Throw(0);
        play.Skip(Scope.Aim);
        Assert.Equal(BlockEndReason.Compared, play.Ended.Why);
    }

    [Fact]
    public void Repeat_Aim_SaysToVoidInstead() => Assert.Contains(
        "void a shot",
        ComparisonPlay.Begun(""" "throwing": "alternate", "goodThrowsEach": 2 """).Refusal(at => new SessionInput.Repeat(at, Scope.Aim)), StringComparison.Ordinal);

    [Theory]
    [InlineData(null, "no ball is chosen for \"reference\", \"other\"")]
    [InlineData("reference=Old", "no ball is chosen for \"other\"")]
    [InlineData("reference=Old;other=  ", "no ball is chosen for \"other\"")]
    [InlineData("reference=Old;other=Old", "\"reference\" and \"other\" are the same ball, \"Old\"")]
    [InlineData("reference=Old One;other=OLD  one", "\"reference\" and \"other\" are the same ball, \"Old One\"")]
    [InlineData("reference=Old;other=New;third=Blue", "ball \"Blue\" was chosen as \"third\", which this drill does not know: it compares reference, other")]
    [InlineData("reference=Old;other=New;other=Blue", "two balls were chosen as \"other\": choose one")]
    public void Open_BallsThatDoNotFit_SaysWhichAndWhatToDo(string? balls, string message)
    {
        var drill = Play.Drill(ComparisonPlay.Block(ComparisonPlay.TwoLines, """ "throwing": "alternate", "goodThrowsEach": 2 """));
        var chosen = (balls?.Split(';') ?? []).Select(ball => ball.Split('=')).Select(ball => new ChosenBall(ball[0], ball[1])).ToValueList();

        var opening = SessionCore.Open(Play.Setup with { Balls = chosen }, drill);
        Assert.Null(opening.State);
        Assert.Contains(opening.Problems, problem => problem.Contains(message, StringComparison.Ordinal));
    }

    [Fact]
    public void Open_BallsForADrillThatComparesNone_SaysSo()
    {
        var opening = SessionCore.Open(ComparisonPlay.Setup, Play.Drill(Play.OneTarget(""" "until": { "shots": 3 } """)));

        Assert.Contains("compares no balls", opening.Problems[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Turn_OtherKindsOfDrill_IsNull() => Assert.Null(Play.Begun(Play.OneTarget(""" "until": { "shots": 3 } """)).State.Turn);

    /// <summary>Whatever comes, the turns are those that a plain list of turns gives: written another way than the rule.</summary>
    [Fact]
    public void Turns_AnyThrows_AreThoseOfTheWrittenOutList()
    {
        Gen.Select(Gen.Int[0, 2], Gen.Int[1, 3], Gen.Int[0, 3], Gen.Int[0, 5], Gen.Int[0, 9].Array[0, 80]).Sample(
            (throwing, good, more, check, throws) =>
            {
                var most = good + more;
                var words = throwing switch { 0 => "\"alternate\"", 1 => "\"mirrored\"", _ => "\"blocks\", \"throwsInARow\": 2" };
                var order = $""" "throwing": {words}, "goodThrowsEach": {good}, "mostThrowsEach": {most}, "firstTargetHeld": true{(check > 1 ? $", \"checkEvery\": {check}" : "")} """;
                var play = ComparisonPlay.Begun(order);
                string turns = throwing switch { 0 => "ON", 1 => "ONNO", _ => "OONN" };
                var (line, sinceCheck) = (0, 0);
                var waiting = Waiting(turns);
                var has = Fresh();
                foreach (var what in throws)
                {
                    while (line < 2 && Done('O') && Done('N'))
                    {
                        (line, waiting, has) = (line + 1, Waiting(turns), Fresh());
                    }

                    if (line == 2)
                    {
                        break;
                    }

                    while (Done(waiting.Peek()))
                    {
                        waiting.Dequeue();
                    }

                    var isCheck = check > 1 && sinceCheck + 1 >= check;
                    var due = isCheck ? 'O' : waiting.Peek();
                    Assert.Equal((due == 'O' ? "Old one" : "New one", isCheck, line + 1), (play.State.Turn!.Due.Name, play.State.Turn.IsCheck, play.State.Turn.Line));

                    // 0 another ball of the two, 1 a third one, 2 and 3 a bad throw, else a good one.
                    var thrown = what switch { 0 => due == 'O' ? 'N' : 'O', 1 => 'X', _ => due };
                    var isGood = what is not (2 or 3);
                    ThrowWith(play, thrown switch { 'O' => "Old one", 'N' => "New one", _ => "Third" }, isGood ? 0 : 9);
                    if (thrown != 'X')
                    {
                        has[thrown] = (has[thrown].Good + (isGood ? 1 : 0), has[thrown].Throws + 1);
                    }

                    if (thrown == waiting.Peek() && thrown == due)
                    {
                        waiting.Dequeue();
                    }

                    sinceCheck = isCheck && thrown == 'O' ? 0 : sinceCheck + 1;
                }

                bool Done(char ball) => has[ball].Good >= good || has[ball].Throws >= most;
            },
            iter: 400);

        static Queue<char> Waiting(string turns) => new(string.Concat(Enumerable.Repeat(turns, 60)));

        static Dictionary<char, (int Good, int Throws)> Fresh() => new() { ['O'] = (0, 0), ['N'] = (0, 0) };
    }

    /// <summary>What a void or a correction leaves is what the same shots give when they are thrown so in the first place.</summary>
    [Fact]
    public void Cells_AfterVoidsAndCorrections_AreTheSumOfTheShotsThatCount()
    {
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 29]).Array[1, 60].Sample(
            acts =>
            {
                var play = ComparisonPlay.Begun(""" "throwing": "mirrored", "goodThrowsEach": 5, "mostThrowsEach": 8, "checkEvery": 4, "firstTargetHeld": true """);
                foreach (var (what, number) in acts)
                {
                    if (play.State.Phase == SessionPhase.Ended)
                    {
                        return;
                    }

                    var known = play.State.FindShot(number);
                    switch (what)
                    {
                        case 0 when known is { VoidReason: null }:
                            play.Void(number);
                            break;
                        case 1 when known is not null:
                            play.Correct(number, Play.ShotAt(new Aim(known.Aim, known.Targets.Select(one => new NamedTarget(one.Name, one.Target)).ToValueList()), 0) with { Ball = "Old one" });
                            break;
                        case 2:
                            ThrowWith(play, "New one");
                            break;
                        case 3:
                            play.Throw(9, 0);
                            break;
                        default:
                            play.Throw(0);
                            break;
                    }

                    if (play.State.Turn is not { } turn)
                    {
                        continue;
                    }

                    var shots = play.State.ShotsOfRun().Where(shot => shot.VoidReason is null && shot.Aim == play.Shown.Name).ToList();
                    foreach (var cell in turn.Balls)
                    {
                        var own = shots.Where(shot => shot.Compared!.Role == cell.Role).ToList();
                        Assert.Equal((own.Count(shot => shot.Compared!.IsGood), own.Count), (cell.Good, cell.Throws));
                    }

                    Assert.True(turn.IsCheck || turn.Balls.Single(cell => cell.Role == turn.Due.Role).StillWanted > 0);
                }
            },
            iter: 400);
    }

    private static string Thrown(Play play)
    {
        var turns = new List<string>();
        var line = 0;
        while (play.State.Turn is { } turn)
        {
            var mark = turn.Line == line ? "" : $"{turn.Line}";
            line = turn.Line;
            turns.Add($"{mark}{turn.Due.Name[0]}{(turn.IsCheck ? "c" : "")}");
            play.Throw(0);
        }

        // In pairs, so that a row of turns can be read.
        return string.Join(' ', turns.Chunk(2).Select(pair => string.Concat(pair)));
    }

    private static GradedShot ThrowWith(Play play, string ball, double nearMiss = 0) =>
        play.Throw(Play.ShotAt(play.Shown, nearMiss, 0) with { Ball = ball }).OfType<SessionEvent.ShotGraded>().Single().Shot;

    private static IEnumerable<string> Cells(Play play) => play.State.Turn!.Balls.Select(cell => $"{cell.Ball} {cell.Good}/{cell.GoodWanted}");
}
