using AimTrainer.Domain;
using AimTrainer.Motion;

namespace AimTrainer.Feeds.Tests;

public sealed class HookingPathTests
{
    private static readonly SimulatedBowlerSettings _exact = new()
    {
        LaydownSpreadBoards = 0,
        AngleSpreadDegrees = 0,
        SpeedSpreadMilesPerHour = 0,
        RevsSpreadRpm = 0,
        MeasurementNoiseBoards = 0,
    };

    [Theory]
    [InlineData(Hand.Right)]
    [InlineData(Hand.Left)]
    public void BoardAt_AnyDistance_IsThePathOfTheModel(Hand hand)
    {
        var release = new Release(22, 2.6, 17.5, 350, hand);
        var path = new HookingPath(InventedLane.House(), Ball.Usual, 50, 8);
        var traced = Paths.Trace(
            InventedLane.House(),
            Ball.Usual,
            new Motion.Release(hand, 22, 2.6, 17.5 * 0.44704, 350) { AxisRotationDegrees = 50, AxisTiltDegrees = 8 });

        foreach (var feet in (double[])[0, 15, 41.5, 60])
        {
            Assert.Equal(traced.At(feet).Board, path.BoardAt(release, Feet.FromFeet(feet), TestLane.Lane));
        }
    }

    [Fact]
    public void BoardAt_Hooking_ComesBackWhereAStraightBallDoesNot()
    {
        var release = new Release(22, 2.6, 17.9, 350, Hand.Right);
        var (hooks, straight) = (new HookingPath(InventedLane.House(), Ball.Usual), new StraightPath());
        var (breakpoint, pins) = (Feet.FromFeet(41), Feet.FromFeet(60));

        Assert.True(hooks.BoardAt(release, pins, TestLane.Lane) > hooks.BoardAt(release, breakpoint, TestLane.Lane) + 5);
        Assert.True(straight.BoardAt(release, pins, TestLane.Lane) < straight.BoardAt(release, breakpoint, TestLane.Lane));
    }

    [Fact]
    public void BoardAt_BeyondTheGutter_StaysOffTheBoards()
    {
        var path = new HookingPath(InventedLane.House(), Ball.Usual);
        Assert.Equal(0, path.BoardAt(new Release(2, 4, 17, 300, Hand.Right), Feet.FromFeet(40), TestLane.Lane), 1e-9);
        Assert.Equal(40, path.BoardAt(new Release(38, -4, 17, 300, Hand.Left), Feet.FromFeet(40), TestLane.Lane), 1e-9);
    }

    [Theory]
    [InlineData(20, 15, 3)]
    [InlineData(20, 1, 2)]
    [InlineData(41, 1, 17)]
    public void BoardAt_ReleaseThatTheModelDoesNotTake_RunsStraight(double laydown, double angle, double mph)
    {
        var release = new Release(laydown, angle, mph, 300, Hand.Right);
        Assert.Equal(
            new StraightPath().BoardAt(release, Feet.FromFeet(40), TestLane.Lane),
            new HookingPath(InventedLane.House(), Ball.Usual).BoardAt(release, Feet.FromFeet(40), TestLane.Lane));
    }

    [Theory]
    [InlineData(15, 15, 7, 40)]
    [InlineData(20, 15, 10, 42)]
    [InlineData(10, 15, 6, 40)]
    public void Throw_NoScatterAtALine_CrossesBothTargetsAlthoughTheBallHooks(double near, double nearFeet, double far, double farFeet)
    {
        var aim = TestLane.Line(near, nearFeet, far, farFeet);
        var shot = SimulatedBowler.Throw(_exact, 1, aim, TestLane.Lane, new HookingPath(InventedLane.House(), Ball.Usual));

        Assert.Equal(near, BoardAt(shot, nearFeet), 0.01);
        Assert.Equal(far, BoardAt(shot, farFeet), 0.01);
    }

    [Theory]
    [InlineData(10, 15)]
    [InlineData(18, 60)]
    public void Throw_NoScatterAtOneTarget_CrossesIt(double board, double feet)
    {
        var shot = SimulatedBowler.Throw(_exact, 1, TestLane.Single(board, feet), TestLane.Lane, new HookingPath(InventedLane.House(), Ball.Usual));
        Assert.Equal(board, BoardAt(shot, feet), 0.01);
    }

    [Fact]
    public void Throw_AnyScatter_IsTheSameShotForTheSameSeed()
    {
        var (settings, aim) = (new SimulatedBowlerSettings { Seed = 5 }, TestLane.Line(15, 15, 7, 40));
        var path = new HookingPath(InventedLane.House(), Ball.Usual);
        var first = SimulatedBowler.Throw(settings, 3, aim, TestLane.Lane, path);
        SimulatedBowler.Throw(settings, 4, aim, TestLane.Lane, path);

        Assert.Equal(first, SimulatedBowler.Throw(settings, 3, aim, TestLane.Lane, path));
    }

    private static double BoardAt(Shot shot, double feet) => shot.Crossings.AsEnumerable().Single(crossing => crossing.Distance.Value == feet).Board.Boards;
}
