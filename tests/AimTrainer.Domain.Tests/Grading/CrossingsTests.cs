using CsCheck;

namespace AimTrainer.Domain.Tests;

public sealed class CrossingsTests
{
    [Theory]
    [InlineData(15, 15)]
    [InlineData(15, 14.5)]
    [InlineData(15, 15.5)]
    [InlineData(14.9, 15.4)]
    [InlineData(15.4, 14.9)]
    [InlineData(42.3, 42.8)]
    [InlineData(42.3, 41.8)]
    [InlineData(0.1, 0.6)]
    [InlineData(59.7, 59.2)]
    public void At_WithinHalfAFoot_IsMeasured(double target, double crossing) =>
        Assert.Equal(Measured(10.5), Crossings.At(SampleShot.Of([(crossing, 10.5)]), Feet.FromFeet(target)));

    [Theory]
    [InlineData(15, 14.499)]
    [InlineData(15, 15.501)]
    [InlineData(14.9, 15.401)]
    [InlineData(42.3, 41.799)]
    public void At_JustBeyondHalfAFoot_IsUnknown(double target, double crossing) =>
        Assert.Equal(TargetCrossing.Unknown, Crossings.At(SampleShot.Of([(crossing, 10.5)]), Feet.FromFeet(target)));

    [Fact]
    public void At_EveryDecimalDistance_IsMeasuredAtExactlyHalfAFoot()
    {
        // A tenth has no exact binary fraction: in doubles, some of these would lie a hair beyond half a foot.
        for (var tenths = 5; tenths <= 595; tenths++)
        {
            var target = Feet.FromFeet(tenths / 10.0);
            Assert.Equal(CrossingKind.Measured, Crossings.At(SampleShot.Of([((tenths + 5) / 10.0, 9)]), target).Kind);
            Assert.Equal(CrossingKind.Measured, Crossings.At(SampleShot.Of([((tenths - 5) / 10.0, 9)]), target).Kind);
        }
    }

    [Theory]
    [InlineData(14.6, 10, 15.3, 12, 12)]
    [InlineData(14.8, 10, 15.3, 12, 10)]
    [InlineData(14.7, 10, 15.3, 12, 10)]
    [InlineData(14.5, 10, 15, 12, 12)]
    public void At_TwoWithinHalfAFoot_TakesTheNearest(double near, double nearBoard, double far, double farBoard, double expected) =>
        Assert.Equal(Measured(expected), Crossings.At(SampleShot.Of([(near, nearBoard), (far, farBoard)]), Feet.FromFeet(15)));

    [Theory]
    [InlineData(10, 12, 20, 8, 15, 10)]
    [InlineData(10, 12, 25, 9, 15, 11)]
    [InlineData(30, 10, 45, 7, 42.5, 7.5)]
    [InlineData(30.3, 10, 45.3, 7, 35.3, 9)]
    [InlineData(10, 10, 13, 11, 11, 10.33)]
    [InlineData(10, 10, 13, 11, 12, 10.67)]
    [InlineData(10, 10, 12, 10.01, 11, 10)]
    [InlineData(10, 10.01, 12, 10.02, 11, 10.02)]
    public void At_BetweenTwoAtMost15FeetApart_IsOnTheStraightLine(
        double near, double nearBoard, double far, double farBoard, double target, double expected) =>
        Assert.Equal(
            new TargetCrossing(CrossingKind.Interpolated, Board.FromBoards(expected)),
            Crossings.At(SampleShot.Of([(near, nearBoard), (far, farBoard)]), Feet.FromFeet(target)));

    [Theory]
    [InlineData(10, 25.001)]
    [InlineData(0, 60)]
    [InlineData(14.9, 29.901)]
    public void At_BetweenTwoFartherApart_IsUnknown(double near, double far) =>
        Assert.Equal(TargetCrossing.Unknown, Crossings.At(SampleShot.Of([(near, 12), (far, 8)]), Feet.FromFeet((near + far) / 2)));

    [Fact]
    public void At_ExactlyFifteenFeetApartInAwkwardDecimals_IsInterpolated()
    {
        for (var tenths = 0; tenths <= 450; tenths++)
        {
            var shot = SampleShot.Of([(tenths / 10.0, 12), ((tenths + 150) / 10.0, 9)]);
            Assert.Equal(
                new TargetCrossing(CrossingKind.Interpolated, Board.FromBoards(10)),
                Crossings.At(shot, Feet.FromFeet((tenths + 100) / 10.0)));
        }
    }

    [Fact]
    public void At_NearestOnEitherSide_AreTheOnesUsed() =>
        Assert.Equal(
            new TargetCrossing(CrossingKind.Interpolated, Board.FromBoards(11)),
            Crossings.At(SampleShot.Of([(5, 30), (12, 12), (18, 10), (19, 39)]), Feet.FromFeet(15)));

    [Theory]
    [InlineData(9)]
    [InlineData(43.001)]
    [InlineData(60)]
    [InlineData(0)]
    public void At_BeyondTheOuterCrossings_IsNeverExtrapolated(double target) =>
        Assert.Equal(TargetCrossing.Unknown, Crossings.At(SampleShot.Of([(10, 12), (20, 10), (30, 9), (42.5, 8)]), Feet.FromFeet(target)));

    [Fact]
    public void At_NothingMeasured_IsUnknown() => Assert.Equal(TargetCrossing.Unknown, Crossings.At(SampleShot.Of([]), Feet.FromFeet(15)));

    [Fact]
    public void At_Laydown_IsACrossingAtTheFoulLine()
    {
        var shot = SampleShot.Of([(10, 10)], reading => reading.LaydownBoard = 20);
        Assert.Equal(Measured(20), Crossings.At(shot, Feet.FromFeet(0.5)));
        Assert.Equal(new TargetCrossing(CrossingKind.Interpolated, Board.FromBoards(15)), Crossings.At(shot, Feet.FromFeet(5)));
    }

    [Fact]
    public void At_Breakpoint_IsACrossingAtItsDistance()
    {
        var shot = SampleShot.Of([(30, 10)], reading => (reading.BreakpointBoard, reading.BreakpointFeet) = (7, 42));
        Assert.Equal(Measured(7), Crossings.At(shot, Feet.FromFeet(42.5)));
        Assert.Equal(new TargetCrossing(CrossingKind.Interpolated, Board.FromBoards(8)), Crossings.At(shot, Feet.FromFeet(38)));
    }

    [Fact]
    public void At_BreakpointWithoutADistance_IsNoCrossing() =>
        Assert.Equal(TargetCrossing.Unknown, Crossings.At(SampleShot.Of([], reading => reading.BreakpointBoard = 7), Feet.FromFeet(42)));

    [Fact]
    public void At_Entry_IsACrossingAtTheHeadPin()
    {
        var shot = SampleShot.Of([(50, 10)], reading => reading.EntryBoard = 17.5);
        Assert.Equal(Measured(17.5), Crossings.At(shot, Feet.FromFeet(60)));
        Assert.Equal(new TargetCrossing(CrossingKind.Interpolated, Board.FromBoards(13.75)), Crossings.At(shot, Feet.FromFeet(55)));
    }

    [Theory]
    [InlineData(0, 20)]
    [InlineData(42, 8)]
    [InlineData(60, 17)]
    public void At_TwoAtTheVerySameDistance_TakesTheFirstOfItsOrder(double target, double expected)
    {
        var shot = SampleShot.Of(
            [(0, 21), (42, 8), (60, 17)],
            reading => (reading.LaydownBoard, reading.BreakpointBoard, reading.BreakpointFeet, reading.EntryBoard) = (20, 7, 42, 17.5));
        Assert.Equal(Measured(expected), Crossings.At(shot, Feet.FromFeet(target)));
    }

    [Fact]
    public void At_AnyShot_IsUnknownOrBetweenTheBoardsThatWereSeen()
    {
        var crossing = Gen.Select(Gen.Int[0, 600], Gen.Int[0, 4000]);
        Gen.Select(crossing.Array[1, 6], Gen.Int[0, 600]).Sample((seen, at) =>
        {
            (double, double)[] crossings = [.. seen.DistinctBy(one => one.Item1).Select(one => (one.Item1 / 10.0, one.Item2 / 100.0))];
            var shot = SampleShot.Of(crossings);
            var found = Crossings.At(shot, Feet.FromFeet(at / 10.0));
            var boards = shot.Crossings.Select(one => one.Board).ToList();
            return found.Board is { } board
                ? found.Kind != CrossingKind.Unknown && board >= boards.Min() && board <= boards.Max() && board == Board.FromMeasurement(board.Boards)
                : found == TargetCrossing.Unknown;
        });
    }

    private static TargetCrossing Measured(double board) => new(CrossingKind.Measured, Board.FromBoards(board));
}
