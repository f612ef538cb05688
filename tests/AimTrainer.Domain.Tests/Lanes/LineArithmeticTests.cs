using CsCheck;

namespace AimTrainer.Domain.Tests;

/// <remarks>
/// The sources count a launch angle positive toward the centre; here it is positive outward, so each sign is turned.
/// </remarks>
public sealed class LineArithmeticTests
{
    private static readonly LaneProfile Lane = SampleLane.Usual;

    [Theory]
    // Source: exit board = pattern length - 31. 38 ft: bowlingthismonth.com "Understanding your bowling environment pt 1";
    // 39 and 42 ft: bowlingknowledge.info id=141; 45 ft: hobbyseekers.com. 35, 37 and 43 ft: common practice (coaches' own
    // pages, left unnamed here).
    [InlineData(35, 4)]
    [InlineData(37, 6)]
    [InlineData(38, 7)]
    [InlineData(39, 8)]
    [InlineData(42, 11)]
    [InlineData(43, 12)]
    [InlineData(45, 14)]
    public void ExitOfPattern_Published_IsLengthLess31AtTheEndOfTheOil(double feet, double board) =>
        Assert.Equal(At(feet, board), LineArithmetic.ExitOfPattern(Feet.FromFeet(feet)));

    [Theory]
    [InlineData(32, 1)]
    [InlineData(52, 21)]
    public void ExitOfPattern_AtTheLimits_IsTaken(double feet, double board) =>
        Assert.Equal(board, LineArithmetic.ExitOfPattern(Feet.FromFeet(feet)).Board.Boards);

    [Theory]
    [InlineData(31.99)]
    [InlineData(52.01)]
    public void ExitOfPattern_OutsideTheLimits_Throws(double feet) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LineArithmetic.ExitOfPattern(Feet.FromFeet(feet)));

    [Theory]
    // Source: pairs 15 to 7 and 12 to 7, 9 to 7 at 40 ft: bowl4fun.com tips 18, 46 and 19; 10 to 4: US Bowler Nov 2011
    // (its distance, 40 ft, is assumed); 13 to 8 at 39 ft: common practice; 12 to 8 at 41 ft: bowlingchecklists 2015/09;
    // 15 to 11 at 60 ft: "25-15-11", BTM lane play alignment. Arrows at 15 ft. Laydown, angle and 45 ft board derived.
    [InlineData(15, 40, 7, 19.800, 1.6254, 5.40)]
    [InlineData(12, 40, 7, 15.000, 1.0160, 6.00)]
    [InlineData(9, 40, 7, 10.200, 0.4065, 6.60)]
    [InlineData(10, 40, 4, 13.600, 1.2192, 2.80)]
    [InlineData(13, 39, 8, 16.125, 1.0584, 6.75)]
    [InlineData(12, 41, 8, 14.308, 0.782, 7.38)]
    [InlineData(15, 60, 11, 16.3333, 0.4516, 12.33)]
    [InlineData(10, 40, 10, 10, 0, 10)]
    public void Line_ThroughTwoTargets_HasItsLaydownAndAngle(
        double arrowsBoard, double feet, double board, double laydown, double outwardDegrees, double boardAt45)
    {
        var (arrows, far) = (At(15, arrowsBoard), At(feet, board));
        Assert.Equal(laydown, LineArithmetic.BoardAt(arrows, far, default).Boards, 0.0005);
        Assert.Equal(boardAt45, LineArithmetic.BoardAt(arrows, far, Feet.FromFeet(45)).Boards, 0.005);
        Assert.Equal(outwardDegrees, LineArithmetic.LaunchAngle(arrows, far, Lane).Value, 0.0005);
    }

    [Theory]
    // Source: 41.5 in, 39 boards and 12 in a foot; derived. One degree is this many boards, and one board this angle.
    [InlineData(15, 2.9526, 0.33871)]
    [InlineData(40, 7.8737, 0.1270)]
    [InlineData(60, 11.8106, 0.0847)]
    public void Angle_OneDegreeAndOneBoard_AgreeWithTheTable(double feet, double boardsPerDegree, double degreesPerBoard)
    {
        var distance = Feet.FromFeet(feet);
        var outward = LineArithmetic.BoardAt(Board.LaneCentre, Degrees.FromDegrees(1), distance, Lane);
        Assert.Equal(20 - boardsPerDegree, outward.Boards, 0.0001);
        Assert.Equal(degreesPerBoard, LineArithmetic.LaunchAngle(At(0, 20), At(feet, 19), Lane).Value, 0.0005);
        Assert.Equal(-degreesPerBoard, LineArithmetic.LaunchAngle(At(0, 20), At(feet, 21), Lane).Value, 0.0005);
    }

    [Theory]
    // Source: puzzle at bowlmovementswy.blogspot.com 2010/01: how straight can a ball reach the pins; corner of foul line and gutter. Derived.
    [InlineData(20, 1.6508)]
    [InlineData(17.5, 1.4392)]
    public void LaunchAngle_FromTheCorner_IsFarBelowTheBestEntryAngle(double board, double inwardDegrees) =>
        Assert.Equal(-inwardDegrees, LineArithmetic.LaunchAngle(new Crossing(default, Board.NearEdge), At(60, board), Lane).Value, 0.0005);

    [Theory]
    // Source: similar triangles from 15 ft, derived: one board at the arrows with the same laydown.
    [InlineData(0, 1, 40, 2.6667)]
    [InlineData(0, 1, 45, 3)]
    [InlineData(0, 1, 60, 4)]
    // Source: "2-and-1" and "3-and-2", named in BTM's target-line article; shifts derived.
    [InlineData(2, 1, 40, -0.6667)]
    [InlineData(2, 1, 45, -1)]
    [InlineData(2, 1, 60, -2)]
    [InlineData(3, 2, 40, 0.3333)]
    [InlineData(3, 2, 45, 0)]
    [InlineData(3, 2, 60, -1)]
    // Source: "feet 4, target 2 toward centre", tenpin.org.au id=972; shifts derived.
    [InlineData(4, 2, 40, -1.3333)]
    [InlineData(4, 2, 45, -2)]
    [InlineData(4, 2, 60, -4)]
    // Source: "2-and-2" is a parallel move, tenpin.org.au id=972.
    [InlineData(2, 2, 15, 2)]
    [InlineData(2, 2, 60, 2)]
    // Source: 3-1-2, probowluk.co.uk LaneCraft02: two boards on the approach (15 ft before the foul line) are one at the foul line
    // and three at the pins, the other way, with the target at the arrows kept.
    [InlineData(1, 0, -15, 2)]
    [InlineData(1, 0, 0, 1)]
    [InlineData(1, 0, 15, 0)]
    [InlineData(1, 0, 60, -3)]
    public void ShiftAt_NamedMoves_ShiftTheLine(double feet, double target, double distance, double shift)
    {
        var move = new LineMove(BoardOffset.FromBoards(feet), BoardOffset.FromBoards(target));
        Assert.Equal(shift, LineArithmetic.ShiftAt(move, Feet.FromFeet(15), Feet.FromFeet(distance)).Boards, 0.00005);
    }

    [Theory]
    // Source: as above; both moves turn the line by 0.339 degrees outward.
    [InlineData(2, 1)]
    [InlineData(3, 2)]
    public void LaunchAngle_AfterAMove_OpensByOneBoardAtTheArrows(double feet, double target)
    {
        var before = LineArithmetic.LaunchAngle(At(0, 15), At(15, 15), Lane);
        var after = LineArithmetic.LaunchAngle(At(0, 15 + feet), At(15, 15 + target), Lane);
        Assert.Equal(0.3387, after.Value - before.Value, 0.0005);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void ShiftAt_TargetBeforeTheLane_Throws(double targetFeet) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LineArithmetic.ShiftAt(default, Feet.FromFeet(targetFeet), Feet.FromFeet(40)));

    [Fact]
    public void ShiftAt_AnyMove_IsHowFarTheLineMoved()
    {
        var shift = Gen.Int[-100, 100].Select(count => BoardOffset.FromBoards(count / 10.0));
        var board = Gen.Int[50, 350].Select(count => Board.FromBoards(count / 10.0));
        Gen.Select(board, board, shift, shift, Gen.Double[-15, 60]).Sample((laydown, arrows, feet, target, down) =>
        {
            var distance = Feet.FromFeet(down);
            var before = LineArithmetic.BoardAt(new Crossing(default, laydown), new Crossing(Lane.ArrowsDistance, arrows), distance);
            var after = LineArithmetic.BoardAt(
                new Crossing(default, laydown + feet), new Crossing(Lane.ArrowsDistance, arrows + target), distance);
            Assert.Equal((after - before).Boards, LineArithmetic.ShiftAt(new LineMove(feet, target), Lane.ArrowsDistance, distance).Boards, 0.00021);
        });
    }

    [Fact]
    public void LaunchAngle_OfABoardAtAnAngle_IsThatAngle()
    {
        var angle = Gen.Int[-5000, 5000].Select(count => Degrees.FromMeasurement(count / 1000.0));
        Gen.Select(Gen.Double[5, 35], angle, Gen.Double[5, 60], Gen.Double[41, 42]).Sample((laydown, degrees, down, inches) =>
        {
            var lane = Lane with { Width = Inches.FromInches(inches) };
            var start = Board.FromBoards(laydown);
            var board = LineArithmetic.BoardAt(start, degrees, Feet.FromFeet(down), lane);
            var found = LineArithmetic.LaunchAngle(new Crossing(default, start), new Crossing(Feet.FromFeet(down), board), lane);
            Assert.Equal(degrees.Value, found.Value, 0.0011);
        });
    }

    [Fact]
    public void LaunchAngle_WiderLane_IsWider()
    {
        var wide = Lane with { Width = Inches.FromInches(42) };
        Assert.True(LineArithmetic.LaunchAngle(At(0, 20), At(15, 10), wide) > LineArithmetic.LaunchAngle(At(0, 20), At(15, 10), Lane));
    }

    [Theory]
    [InlineData(15, 15)]
    [InlineData(15, 14.9)]
    public void LaunchAngle_NotFartherDown_Throws(double near, double far) =>
        Assert.Throws<ArgumentException>(() => LineArithmetic.LaunchAngle(At(near, 10), At(far, 9), Lane));

    [Fact]
    public void BoardAt_OneDistance_Throws() =>
        Assert.Throws<ArgumentException>(() => LineArithmetic.BoardAt(At(15, 10), At(15, 9), Feet.FromFeet(40)));

    [Theory]
    [InlineData(90)]
    [InlineData(-90)]
    [InlineData(180)]
    public void BoardAt_AcrossTheLane_Throws(double degrees) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LineArithmetic.BoardAt(Board.LaneCentre, Degrees.FromDegrees(degrees), Feet.FromFeet(15), Lane));

    private static Crossing At(double feet, double board) => new(Feet.FromFeet(feet), Board.FromBoards(board));
}
