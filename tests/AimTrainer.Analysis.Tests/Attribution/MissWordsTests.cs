using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

public sealed class MissWordsTests
{
    private static readonly LaneProfile Lane = LaneProfileReader.Default;

    [Theory]
    // The line 15@15 to 7@40 runs straight from board 19.8 at 1.6254 degrees (trade.md check 7).
    [InlineData(19.8, 15.8, 9.1, 1, "2.1 boards inside downlane: laid down on the mark, angle 0.3 degrees too closed; ball held its line")]
    [InlineData(19.8, 15, 7, 1, "on the mark downlane: laid down on the mark, angle as planned; ball held its line")]
    [InlineData(20.8, 16, 8, 1, "1 board inside downlane: laid down 1 board inside, angle as planned; ball held its line")]
    [InlineData(19.8, 15, 9, 1, "2 boards inside downlane: laid down on the mark, angle as planned; ball read early by 2 boards")]
    [InlineData(19.8, 15, 5, 1, "2 boards outside downlane: laid down on the mark, angle as planned; ball read late by 2 boards")]
    [InlineData(19.8, 13.5, 3, 1, "4 boards outside downlane: laid down on the mark, angle 0.5 degrees too open; ball held its line")]
    [InlineData(19.8, 15.8, 9.1, 0, "0.8 boards inside at the arrows: laid down on the mark, angle 0.3 degrees too closed")]
    public void Of_Split_ReadsAsACoachWouldSayIt(double laydown, double arrows, double far, int index, string sentence) =>
        Assert.Equal(sentence, Say(Hand.Right, SideNames.InsideOutside, laydown, arrows, far, index));

    [Theory]
    [InlineData(Hand.Right, "2.1 boards left downlane: laid down on the mark, angle 0.3 degrees too far left; ball held its line")]
    [InlineData(Hand.Left, "2.1 boards right downlane: laid down on the mark, angle 0.3 degrees too far right; ball held its line")]
    public void Of_LeftAndRight_AreTheBowlers(Hand hand, string sentence) => Assert.Equal(sentence, Say(hand, SideNames.LeftRight, 19.8, 15.8, 9.1, 1));

    [Fact]
    public void Of_EitherHand_IsTheSameInsideAndOutside() =>
        Assert.Equal(Say(Hand.Right, SideNames.InsideOutside, 18, 15, 9, 1), Say(Hand.Left, SideNames.InsideOutside, 18, 15, 9, 1));

    [Fact]
    public void Of_WhatWasNotMeasured_IsSaid()
    {
        Assert.Equal("downlane: nobody measured the crossing", Say(Hand.Right, SideNames.InsideOutside, 19.8, 15, null, 1));
        var unsplit = Say(Hand.Right, SideNames.InsideOutside, null, 15, 9, 1);
        Assert.StartsWith("2 boards inside downlane: not split, only board 15 at 15 ft", unsplit, StringComparison.Ordinal);
    }

    [Theory]
    // Source: trade.md check 11: 1 degree = 2.9526 boards over 15 ft.
    [InlineData(SideNames.InsideOutside, 14.95, "2 boards inside at the arrows: laid down on board 15, 1.0 degrees outward; what was meant is not known, so it cannot be split")]
    [InlineData(SideNames.LeftRight, 14.95, "2 boards left at the arrows: laid down on board 15, 1.0 degrees to the right; what was meant is not known, so it cannot be split")]
    [InlineData(SideNames.InsideOutside, 12, "2 boards inside at the arrows: laid down on board 12, straight down; what was meant is not known, so it cannot be split")]
    public void Of_OneTargetAndNoUsualAngle_SaysHowItLeft(SideNames sides, double laydown, string sentence)
    {
        var shot = MadeShots.Shot(laydown, [(15, 12)]).At(1, (10, 15));
        var split = MissSplitter.Split(shot, StraightFit.Of(shot.Shot, Lane), null, Lane);
        Assert.Equal(sentence, new MissWords(Lane, Hand.Right, sides).Of(split, 0, PlanKind.UsualAngle));
    }

    [Fact]
    public void Of_UsualMovement_IsCalledUsual()
    {
        var shot = MadeShots.Shot(19.8, [(15, 15), (40, 9)]).At(1, (15, 15), (7, 40));
        var split = MissSplitter.Split(shot, StraightFit.Of(shot.Shot, Lane), LinePlan.Usual(shot.Targets, 0, 2, Lane), Lane);
        // By hand: held against the usual 2 boards of hook the plan aims at 5 at 40 ft: 0.4 boards a foot from 21 at the foul line.
        Assert.Equal(
            "2 boards inside downlane: laid down 1.2 boards outside, angle 0.4 degrees too closed; ball moved as usual",
            new MissWords(Lane, Hand.Right).Of(split, 1, PlanKind.UsualMovement));
    }

    [Fact]
    public void Of_TwoTargetsDownlane_AreToldApart()
    {
        var shot = MadeShots.Shot(19.8, [(15, 15), (35, 8.6), (45, 9)]).At(1, (15, 15), (8.6, 35), (7, 45));
        var split = MissSplitter.Split(shot, StraightFit.Of(shot.Shot, Lane), LinePlan.Straight(shot.Targets, Lane), Lane);
        Assert.Contains("inside at 45 ft:", new MissWords(Lane, Hand.Right).Of(split, 2, PlanKind.StraightThroughTargets), StringComparison.Ordinal);
    }

    private static string Say(Hand hand, SideNames sides, double? laydown, double arrows, double? far, int index)
    {
        var shot = MadeShots.Shot(laydown, far is { } board ? [(15, arrows), (40, board)] : [(15, arrows)]).At(1, (15, 15), (7, 40));
        var split = MissSplitter.Split(shot, StraightFit.Of(shot.Shot, Lane), LinePlan.Straight(shot.Targets, Lane), Lane);
        return new MissWords(Lane, hand, sides).Of(split, index, PlanKind.StraightThroughTargets);
    }
}
