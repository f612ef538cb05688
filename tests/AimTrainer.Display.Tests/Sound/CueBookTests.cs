using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Sessions.Tests;

namespace AimTrainer.Display.Tests;

/// <summary>What is heard of a step, by table: what happened, what the bowler is told, whose hand, and the cues.</summary>
public sealed class CueBookTests
{
    private static readonly Target Spot = new(Board.FromBoards(10), BoardOffset.FromBoards(4), Feet.FromFeet(15));
    private static readonly Target Far = new(Board.FromBoards(8), BoardOffset.FromBoards(4), Feet.FromFeet(40));

    private static readonly GradeBands ThreeThatHold = new(
    [
        new GradeBand(new Grade("a", 3, true), 0.1m, BoardOffset.Zero),
        new GradeBand(new Grade("b", 2, true), 0.3m, BoardOffset.Zero),
        new GradeBand(new Grade("c", 1, true), 0.5m, BoardOffset.Zero),
    ]);

    private static readonly GradeBands OneThatHolds = new([new GradeBand(new Grade("in", 1, true), 0.5m, BoardOffset.Zero)]);

    // A miss in boards is positive inside: toward higher boards, which lie to a right-hander's left and a left-hander's right.
    // The default bands on 4 boards: best to 1, held to 2, close to 3. Source: GradeBands.Default, docs/drills.md.
    [Theory]
    [InlineData(0.0, Hand.Right, Cue.HitBest)]
    [InlineData(1.0, Hand.Right, Cue.HitBest)]
    [InlineData(-1.01, Hand.Right, Cue.Hit)]
    [InlineData(2.0, Hand.Left, Cue.Hit)]
    [InlineData(2.01, Hand.Right, Cue.CloseLeft)]
    [InlineData(2.01, Hand.Left, Cue.CloseRight)]
    [InlineData(-3.0, Hand.Right, Cue.CloseRight)]
    [InlineData(-3.0, Hand.Left, Cue.CloseLeft)]
    [InlineData(3.01, Hand.Right, Cue.MissLeft)]
    [InlineData(3.01, Hand.Left, Cue.MissRight)]
    [InlineData(-9.0, Hand.Right, Cue.MissRight)]
    [InlineData(-9.0, Hand.Left, Cue.MissLeft)]
    public void For_ShotToldInBoards_BandAndSide(double miss, Hand hand, Cue cue) =>
        Assert.Equal([cue], Heard([Graded(miss, FeedbackSays.Exact)], hand));

    [Theory]
    [InlineData(0.4, Cue.HitBest)]
    [InlineData(0.41, Cue.Hit)]
    [InlineData(1.21, Cue.HitJust)]
    [InlineData(2.01, Cue.MissLeft)]
    public void For_ThreeBandsThatHold_BestHeldJust(double miss, Cue cue) =>
        Assert.Equal([cue], Heard([Graded(miss, FeedbackSays.Exact, ThreeThatHold)], Hand.Right, ThreeThatHold));

    [Fact]
    public void For_OneBandThatHolds_Held() =>
        Assert.Equal([Cue.Hit], Heard([Graded(0, FeedbackSays.Exact, OneThatHolds)], Hand.Right, OneThatHolds));

    [Theory]
    [InlineData(FeedbackSays.Side, 0.0, Cue.Hit)]
    [InlineData(FeedbackSays.Side, 2.5, Cue.MissLeft)]
    [InlineData(FeedbackSays.Side, -9.0, Cue.MissRight)]
    [InlineData(FeedbackSays.Hit, 0.0, Cue.Hit)]
    [InlineData(FeedbackSays.Hit, 2.5, Cue.Missed)]
    [InlineData(FeedbackSays.Hit, -9.0, Cue.Missed)]
    public void For_ShotToldInPart_NoMoreThanThat(FeedbackSays says, double miss, Cue cue) =>
        Assert.Equal([cue], Heard([Graded(miss, says)], Hand.Right));

    [Theory]
    [InlineData(0.0)]
    [InlineData(2.5)]
    [InlineData(-9.0)]
    [InlineData(null)]
    public void For_ShotWithheld_NothingNotEvenItsWidth(double? miss)
    {
        var graded = Graded(miss, FeedbackSays.Exact) with { Told = Told.Nothing, NextWidths = [Width(3)] };

        Assert.Equal(CuePlan.Nothing, CueBook.For([graded], Hand.Right, GradeBands.Default));
    }

    [Fact]
    public void For_ShotNotMeasured_SaysSo() => Assert.Equal([Cue.Unmeasured], Heard([Graded((double?)null, FeedbackSays.Exact)], Hand.Right));

    [Fact]
    public void For_ShotSetAside_SaysSo() =>
        Assert.Equal([Cue.SetAside], Heard([new SessionEvent.ShotSetAside(Sample.Shot(10), "paused")], Hand.Right));

    [Theory]
    [InlineData(3.0, new[] { Cue.HitBest, Cue.Narrower })]
    [InlineData(4.0, new[] { Cue.HitBest })]
    [InlineData(5.0, new[] { Cue.HitBest, Cue.Wider })]
    public void For_WidthChanges_AfterTheShotThatChangedIt(double width, Cue[] cues) =>
        Assert.Equal(cues, Heard([Graded(0, FeedbackSays.Exact) with { NextWidths = [Width(width)] }], Hand.Right));

    [Fact]
    public void For_LastShotOfABlock_WidthThatNobodyThrowsAtIsNotHeard() =>
        Assert.Equal(
            [Cue.HitBest, Cue.BlockEnd],
            Heard([Graded(0, FeedbackSays.Exact) with { NextWidths = [Width(3)] }, Ended(BlockEndReason.Shots)], Hand.Right));

    [Theory]
    [InlineData(3.0, new[] { Cue.Narrower })]
    [InlineData(4.0, new Cue[0])]
    [InlineData(5.0, new[] { Cue.Wider })]
    public void For_CoachChangesATarget_ItsWidthIsHeard(double width, Cue[] cues) =>
        Assert.Equal(cues, Heard([new SessionEvent.TargetChanged("spot", Spot, new Target(Board.FromBoards(12), BoardOffset.FromBoards(width), Spot.Distance))], Hand.Right));

    [Fact]
    public void For_LineWithOneMissed_OnlyThatTarget() =>
        Assert.Equal([Cue.MissRight], Heard([GradedLine(0, -5, FeedbackSays.Exact)], Hand.Right));

    [Fact]
    public void For_LineWithBothMissed_NearestFirst() =>
        Assert.Equal([Cue.CloseLeft, Cue.MissRight], Heard([GradedLine(2.5, -5, FeedbackSays.Exact)], Hand.Right));

    [Fact]
    public void For_LineHeld_AsGoodAsItsPoorestTarget() =>
        Assert.Equal([Cue.Hit], Heard([GradedLine(0, 1.5, FeedbackSays.Exact)], Hand.Right));

    [Fact]
    public void For_LineOfWhichOnlySidesAreTold_TheSidesOfBoth() =>
        Assert.Equal([Cue.MissLeft, Cue.MissRight], Heard([GradedLine(0.5, -5, FeedbackSays.Side)], Hand.Right));

    [Fact]
    public void For_SeveralShotsTold_OneShortNoteEachOldestFirst()
    {
        var told = new Told([OnSide(1, true, 0), OnSide(2, false, 1), OnSide(3, false, -1), new ToldShot(4, null, []), new ToldShot(5, false, [])]);
        var graded = Graded(0, FeedbackSays.Exact) with { Told = told, NextWidths = [Width(3)] };

        Assert.Equal([Cue.ToldHit, Cue.ToldLeft, Cue.ToldRight, Cue.ToldUnmeasured, Cue.ToldMissed], Heard([graded], Hand.Right));
        Assert.Equal([Cue.ToldHit, Cue.ToldRight, Cue.ToldLeft, Cue.ToldUnmeasured, Cue.ToldMissed], Heard([graded], Hand.Left));
    }

    [Fact]
    public void For_MoreShotsToldThanAPlanHolds_TheNewestAndTheEndOfTheBlock()
    {
        var told = new Told(Enumerable.Range(1, 40).Select(number => OnSide(number, number > 35, 1)).ToValueList());
        var heard = Heard([Graded(0, FeedbackSays.Exact) with { Told = told }, Ended(BlockEndReason.Shots)], Hand.Right);

        Assert.Equal(
            [.. Enumerable.Repeat(Cue.ToldLeft, CuePlan.Longest - 2 - 5), .. Enumerable.Repeat(Cue.ToldHit, 5), Cue.BlockEnd],
            heard);
    }

    [Theory]
    [InlineData(BlockEndReason.Shots, true)]
    [InlineData(BlockEndReason.HitsInARow, true)]
    [InlineData(BlockEndReason.WidthReached, true)]
    [InlineData(BlockEndReason.Minutes, true)]
    [InlineData(BlockEndReason.WalkDone, true)]
    [InlineData(BlockEndReason.Skipped, true)]
    [InlineData(BlockEndReason.Repeated, false)]
    public void For_BlockEnds_HeardUnlessItBeginsAgain(BlockEndReason why, bool heard) =>
        Assert.Equal(heard ? [Cue.BlockEnd] : [], Heard([Ended(why)], Hand.Right));

    [Fact]
    public void For_BlockEndsWithASummaryThatWaited_SummaryFirst() =>
        Assert.Equal(
            [Cue.ToldHit, Cue.ToldMissed, Cue.BlockEnd],
            Heard([Ended(BlockEndReason.Minutes) with { Told = new Told([new ToldShot(1, true, []), new ToldShot(2, false, [])]) }], Hand.Right));

    [Fact]
    public void For_LastBlockEnds_OnlyTheEndOfTheSession() =>
        Assert.Equal([Cue.Hit, Cue.SessionEnd], Heard([Graded(0, FeedbackSays.Hit), Ended(BlockEndReason.Shots), new SessionEvent.SessionEnded("done")], Hand.Right));

    [Fact]
    public void For_EventsThatAreNotForTheEar_Nothing()
    {
        SessionEvent[] silent =
        [
            new SessionEvent.BlockBegan(0, 0, "one", BlockKind.Training, 1), new SessionEvent.AimShown(1, new Aim("spot", [new NamedTarget("spot", Spot)]), 0),
            new SessionEvent.ShotVoided(1, "slipped"), new SessionEvent.AimSkipped("spot"), new SessionEvent.AimRepeated("spot"),
            new SessionEvent.SessionPaused(), new SessionEvent.SessionResumed(), new SessionEvent.NoteTaken("x"),
            new SessionEvent.ShotCorrected(Graded(0, FeedbackSays.Exact).Shot, Graded(9, FeedbackSays.Exact).Shot),
        ];

        Assert.Equal(CuePlan.Nothing, CueBook.For(silent.ToValueList(), Hand.Right, GradeBands.Default));
    }

    [Fact]
    public void Between_PicturesOfOneSession_OnlyANewerOneIsHeard()
    {
        var before = new SessionSnapshot { Station = 1, Version = 3, Setup = Sample.Setup() };
        var after = before with { Version = 4, Happened = [Graded(0, FeedbackSays.Hit)] };

        Assert.Equal([Cue.Hit], CueBook.Between(before, after).Cues.AsEnumerable());
        Assert.Equal(CuePlan.Nothing, CueBook.Between(after, after));
        Assert.Equal(CuePlan.Nothing, CueBook.Between(after, before with { Happened = after.Happened }));
    }

    [Fact]
    public void Between_SessionOpenedOrGoneOnWith_Nothing()
    {
        var picture = new SessionSnapshot { Station = 1, Version = 4, Setup = Sample.Setup(), Happened = [Graded(0, FeedbackSays.Hit)] };

        Assert.Equal(CuePlan.Nothing, CueBook.Between(SessionSnapshot.Idle(1), picture));
        Assert.Equal(CuePlan.Nothing, CueBook.Between(picture with { Setup = Sample.Setup("another"), Version = 1 }, picture));
        Assert.Equal(CuePlan.Nothing, CueBook.Between(picture, SessionSnapshot.Idle(1)));
    }

    [Fact]
    public void Plan_MoreCuesThanItHolds_TheFirst() =>
        Assert.Equal(CuePlan.Longest, new CuePlan(Enumerable.Repeat(Cue.Hit, 40).ToValueList(), null).Cues.Count);

    private static IEnumerable<Cue> Heard(SessionEvent[] events, Hand hand, GradeBands? bands = null) =>
        CueBook.For(events.ToValueList(), hand, bands ?? GradeBands.Default).Cues.AsEnumerable();

    private static NextWidth Width(double boards) => new(BoardOffset.FromBoards(boards), false, false);

    private static SessionEvent.BlockEnded Ended(BlockEndReason why) => new(0, "one", why, []);

    private static ToldShot OnSide(int number, bool held, int side) => new(number, held, [new ToldTarget("spot", side, null)]);

    private static SessionEvent.ShotGraded Graded(double? miss, FeedbackSays says, GradeBands? bands = null) =>
        Graded([Result("spot", Spot, miss, bands ?? GradeBands.Default)], says);

    private static SessionEvent.ShotGraded GradedLine(double near, double far, FeedbackSays says) =>
        Graded([Result("spot", Spot, near, GradeBands.Default), Result("far", Far, far, GradeBands.Default)], says);

    private static SessionEvent.ShotGraded Graded(ValueList<TargetResult> results, FeedbackSays says)
    {
        var held = Grader.Held(results);
        var shot = new GradedShot
        {
            Number = 7,
            At = Sample.Start,
            Shot = Sample.Shot(10),
            Run = 0,
            Aim = "spot",
            Targets = results,
            Held = held,
            Points = 0,
            Comparability = new Comparability(null, []),
        };

        // As the feedback rule tells them; its own tests are the domain's.
        var told = says == FeedbackSays.Hit ? [] : results.AsEnumerable()
            .Select(result => new ToldTarget(result.Name, result.Miss?.CompareTo(BoardOffset.Zero), says == FeedbackSays.Exact ? result.Miss : null)).ToValueList();
        var widths = results.AsEnumerable().Select(result => new NextWidth(result.Target.Width, false, false)).ToValueList();
        return new SessionEvent.ShotGraded(shot, widths, new Told([new ToldShot(7, held, told)]));
    }

    private static TargetResult Result(string name, Target target, double? miss, GradeBands bands) => miss is { } boards
        ? new TargetResult(name, target, TargetCrossing.Unknown, BoardOffset.FromBoards(boards), bands.GradeOf(BoardOffset.FromBoards(boards), target.Width))
        : new TargetResult(name, target, TargetCrossing.Unknown, null, null);
}
