using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

public sealed class ProgramViewTests
{
    private static readonly PracticePlan Plan = new() { Starts = new DateOnly(2026, 1, 5), Weeks = 4, SessionsAWeek = 2, GoalSpreadBoards = 1.2 };

    [Fact]
    public void Of_PartOfTheProgram_CountsWhatWasPlannedAndDone()
    {
        // Days 0, 3, 7 and 15 after the first day; today is day 15: two weeks are over.
        var record = TestRecord.Of(((int[])[0, 3, 7, 15]).Select(day => Practice.Block(day, 0, BlockKind.Training, 13, [1, 2, 3])));
        var view = ProgramView.Of(Plan, record, new DateOnly(2026, 1, 20));
        Assert.Equal([2, 1, 1, 0], view.Weeks.Select(week => week.Done));
        Assert.Equal([true, true, false, false], view.Weeks.Select(week => week.Over));
        Assert.Equal((4, 3), (view.PlannedSoFar, view.DoneSoFar));
        Assert.Equal((GoalStanding.NotKnown, 0), (view.Goal!.Standing, view.Goal.Tests));
        Assert.Null(ProgramView.Of(Plan with { GoalSpreadBoards = null }, record, new DateOnly(2026, 1, 20)).Goal);
    }

    [Theory]
    [InlineData(0.3, GoalStanding.Reached)]
    [InlineData(2.0, GoalStanding.NotYet)]
    [InlineData(1.2, GoalStanding.CannotTell)]
    public void Of_SteadySpread_StandsWhereItIs(double spread, GoalStanding standing)
    {
        var noise = new Normal(8);
        var record = TestRecord.Of(Enumerable.Range(0, 8).Select(week => Practice.Block(week * 7, 0, BlockKind.Test, 13, Practice.Misses(noise, 30, spread))));
        var goal = ProgramView.Of(Plan, record, new DateOnly(2026, 3, 1)).Goal!;
        Assert.Equal((standing, 8), (goal.Standing, goal.Tests));
        Assert.InRange(spread, goal.NowLimits!.Value.Low, goal.NowLimits!.Value.High);
    }

    [Fact]
    public void Of_HalfTheWayInLogarithms_SaysSo()
    {
        // Spread from 2 to √(2 · 0.5) = 1 with a goal of 0.5, exactly on a line of logarithms.
        double[] one = [-1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1];
        var factor = 1 / Math.Sqrt(16.0 / 15) / Math.Exp(1 / 30.0);
        var record = TestRecord.Of(Enumerable.Range(0, 5).Select(week =>
            Practice.Block(week * 7, 0, BlockKind.Test, 13, [.. one.Select(miss => miss * factor * Math.Pow(2, 1 - (week / 4.0)))])));
        var goal = ProgramView.Of(Plan with { GoalSpreadBoards = 0.5 }, record, new DateOnly(2026, 3, 1)).Goal!;
        Assert.Equal(2, goal.StartBoards!.Value, 1e-9);
        Assert.Equal(1, goal.NowBoards!.Value, 1e-9);
        Assert.Equal(0.5, goal.ShareOfTheWay!.Value, 1e-9);
    }

    [Fact]
    public void Of_GoalDownlane_LooksAtThoseTestsSinceItBegan()
    {
        var noise = new Normal(8);
        var record = TestRecord.Of(
            from week in Enumerable.Range(0, 8)
            from feet in (double[])[13, 40]
            select Practice.Block(week * 7, 0, BlockKind.Test, feet, Practice.Misses(noise, 30, feet / 20)));
        var goal = ProgramView.Of(Plan with { GoalFeet = 40, Starts = new DateOnly(2026, 1, 19) }, record, new DateOnly(2026, 3, 1)).Goal!;
        Assert.Equal((6, "at 40 ft"), (goal.Tests, goal.Place.ToString()));
        Assert.InRange(goal.NowBoards!.Value, 1.5, 2.7);
    }
}
