using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

/// <remarks>The sources count a launch angle positive toward the centre; here it is positive outward.</remarks>
public sealed class LinePlanTests
{
    private static readonly LaneProfile _lane = LaneProfileReader.Default;

    [Theory]
    // Source: the trade reference, 4d and check values 7 to 10, derived from published pairs.
    [InlineData(15, 7, 40, 19.800, 1.6254, 5.40)]
    [InlineData(12, 7, 40, 15.000, 1.0160, 6.00)]
    [InlineData(9, 7, 40, 10.200, 0.4065, 6.60)]
    [InlineData(13, 8, 39, 16.125, 1.0584, 6.75)]
    [InlineData(10, 4, 40, 13.600, 1.2192, 2.80)]
    [InlineData(15, 11, 60, 16.3333, 0.4516, 12.33)]
    public void Through_PublishedPair_HasItsLaydownAngleAndBoards(double arrows, double board, double feet, double laydown, double angle, double at45)
    {
        foreach (var hand in Enum.GetValues<Hand>())
        {
            var plan = LinePlan.Through(At(arrows, 15), At(board, feet), hand, _lane);
            Assert.Equal(laydown, plan.Laydown.Boards, 0.0005);
            Assert.Equal(angle, plan.LaunchAngle.Value, 0.0006);
            Assert.Equal(at45, plan.BoardAt(Feet.FromFeet(45)).Boards, 0.005);

            // Source: the trade reference, 4e: slide = laydown + distance; for 15 to 7 at 40 ft with 7 boards 26.8.
            Assert.Equal(laydown + 7, plan.Slide.Boards, 0.0005);
            Assert.Equal(laydown + 5.5, LinePlan.Through(At(arrows, 15), At(board, feet), hand, _lane, BoardOffset.FromBoards(5.5)).Slide.Boards, 0.0005);
        }
    }

    [Fact]
    public void Leaving_LaydownAndAngleOfALine_IsTheLineAgain()
    {
        var there = LinePlan.Through(At(20, 15), At(10, 42), Hand.Left, _lane);
        var back = LinePlan.Leaving(there.Laydown, there.LaunchAngle, Feet.FromFeet(42), Hand.Left, _lane);

        // The angle is kept to 0.001 degree, which is 0.008 board at 42 ft.
        Assert.Equal(20, back.Near.Board.Boards, 0.003);
        Assert.Equal(10, back.Far.Board.Boards, 0.008);
        Assert.Equal(there.Laydown.Boards, back.Laydown.Boards, 0.0002);
    }

    [Fact]
    public void Shift_PublishedMoves_DoWhatTheirSourcesSay()
    {
        var plan = LinePlan.Through(At(15, 15), At(7, 40), Hand.Right, _lane);

        // Source: the trade reference, 4f and check value 13.
        Assert.Equal((-0.6667, -1.0, -2.0), Shifts(plan, 2, 1));
        Assert.Equal((0.3333, 0.0, -1.0), Shifts(plan, 3, 2));
        Assert.Equal((-1.3333, -2.0, -4.0), Shifts(plan, 4, 2));
        Assert.Equal((-1.6667, -2.0, -3.0), Shifts(plan, 1, 0));
        Assert.Equal((2.0, 2.0, 2.0), Shifts(plan, 2, 2));
        Assert.Equal(0.339, plan.Moved(Move(2, 1)).LaunchAngle.Value - plan.LaunchAngle.Value, 0.0011);
        Assert.Equal(0.677, plan.Moved(Move(4, 2)).LaunchAngle.Value - plan.LaunchAngle.Value, 0.0011);
    }

    [Fact]
    public void Moved_AnyUsualMove_ShiftsEveryDistanceAsItSays()
    {
        var plan = LinePlan.Through(At(17, 15), At(9, 41), Hand.Right, _lane);
        foreach (var move in LineMoves.Usual)
        {
            var moved = plan.Moved(move);
            foreach (var feet in (double[])[-12, 0, 15, 30, 41, 60])
            {
                Assert.Equal(
                    plan.BoardAt(Feet.FromFeet(feet)).Boards + plan.Shift(move, Feet.FromFeet(feet)).Boards, moved.BoardAt(Feet.FromFeet(feet)).Boards, 0.001);
            }

            Assert.Equal(LineMoves.IsParallel(move), moved.LaunchAngle == plan.LaunchAngle);
            Assert.Equal(plan.Slide + move.Feet, moved.Slide);
        }
    }

    [Fact]
    public void Arrows_SecondToFourth_KeepsBreakpointOrAngle()
    {
        var plan = LinePlan.Through(At(15, 15), At(7, 40), Hand.Left, _lane);
        var breakpoint = LineWalk.Arrows(plan, 2, 4, WalkKeeps.Breakpoint)!;
        var angle = LineWalk.Arrows(plan, 2, 4, WalkKeeps.Angle)!;

        Assert.Equal([10, 12.5, 15, 17.5, 20], breakpoint.AsEnumerable().Select(line => line.Arrows.Boards));
        Assert.All(breakpoint.AsEnumerable(), line => Assert.Equal(At(7, 40), line.Far));

        // Closed from 3 boards outward over 25 ft to 13: 13/25 boards a foot from the fourth arrow, laid down on 20 + 15 * 13 / 25 = 27.8.
        Assert.Equal(27.8, breakpoint[^1].Laydown.Boards, 0.0005);
        Assert.Equal([10, 12.5, 15, 17.5, 20], angle.AsEnumerable().Select(line => line.Arrows.Boards));
        Assert.All(angle.AsEnumerable(), line => Assert.Equal(plan.LaunchAngle, line.LaunchAngle));
        Assert.Equal([2, 4.5, 7, 9.5, 12], angle.AsEnumerable().Select(line => line.Far.Board.Boards));
        Assert.Null(LineWalk.Arrows(plan, 2, 9, WalkKeeps.Angle));
        Assert.Equal([20, 17.5, 15, 12.5, 10], LineWalk.Arrows(plan, 4, 2, WalkKeeps.Angle)!.AsEnumerable().Select(line => line.Arrows.Boards));
    }

    [Fact]
    public void OffTheLane_LineThatLeaves_SaysWhere()
    {
        Assert.Null(LinePlan.Through(At(15, 15), At(7, 40), Hand.Right, _lane).OffTheLane());
        Assert.Equal(0, LinePlan.Through(At(35, 15), At(10, 42), Hand.Right, _lane).OffTheLane()!.Value.Value);

        // 10 to 2 at 40 ft loses 0.32 boards a foot: off at 40 + 1.5 / 0.32 = 44.7 ft.
        Assert.Equal(45, LinePlan.Through(At(10, 15), At(2, 40), Hand.Right, _lane).OffTheLane()!.Value.Value);
    }

    [Fact]
    public void Through_TargetsTheWrongWayRound_Throws() =>
        Assert.Throws<ArgumentException>(() => LinePlan.Through(At(7, 40), At(15, 15), Hand.Right, _lane));

    [Theory]
    [InlineData("20@15 10@42", "20@15 10@42")]
    [InlineData("  20.50@15   10@42.0 ", "20.5@15 10@42")]
    [InlineData("15@15 11@30 7@40", "15@15 11@30 7@40")]
    public void Parse_WrittenLine_ReadsAndWritesBack(string text, string written)
    {
        var targets = LineNotation.Parse(text, out var problem);
        Assert.Null(problem);
        Assert.Equal(written, LineNotation.Write(targets!.AsEnumerable()));
    }

    [Theory]
    [InlineData("", "found 0 targets; allowed: two or more")]
    [InlineData("20@15", "found 1 target; allowed: two or more")]
    [InlineData("20 10", "found 20; allowed: a board from 0.5 to 39.5 and feet from 0 to 60, as 20@15")]
    [InlineData("20@15 10@", "found 10@; allowed")]
    [InlineData("20@15 1e1@42", "found 1e1@42; allowed")]
    [InlineData("20@15 10@42@3", "found 10@42@3; allowed")]
    [InlineData("20@15 10,5@42", "found 10,5@42; allowed")]
    [InlineData("20@42 10@15", "found 10@15 after 20@42; allowed: targets that lie farther and farther down")]
    public void Parse_AnythingElse_SaysWhatIsAllowed(string text, string message)
    {
        Assert.Null(LineNotation.Parse(text, out var problem));
        Assert.StartsWith(message, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_WhatWriteWrites_IsTheSameForEveryHundredth()
    {
        for (var i = 0; i < 2000; i++)
        {
            var target = At(Math.Round(0.5 + (39 * SeededRandom.Unit(1, (ulong)i)), 2), Math.Round(60 * SeededRandom.Unit(2, (ulong)i), 2));
            Assert.Equal(target, LineNotation.ParseTarget(LineNotation.Write(target)));
        }
    }

    private static (double, double, double) Shifts(LinePlan plan, double feet, double target) => (
        plan.Shift(Move(feet, target), Feet.FromFeet(40)).Boards,
        plan.Shift(Move(feet, target), Feet.FromFeet(45)).Boards,
        plan.Shift(Move(feet, target), Feet.FromFeet(60)).Boards);

    private static LineMove Move(double feet, double target) => new(BoardOffset.FromBoards(feet), BoardOffset.FromBoards(target));

    private static Crossing At(double board, double feet) => new(Feet.FromFeet(feet), Board.FromBoards(board));
}
