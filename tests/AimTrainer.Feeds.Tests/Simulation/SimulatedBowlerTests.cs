using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Feeds.Tests;

/// <summary>
/// Bounds of statistics are four standard errors of what they estimate, worked out beside them; the seeds are fixed, so a test
/// either always passes or never does.
/// </summary>
public class SimulatedBowlerTests
{
    private const int Many = 20_000;

    private static readonly Aim Arrows = TestLane.Single(10, 15);

    private static readonly SimulatedBowlerSettings Exact = new()
    {
        Seed = 7,
        LaydownSpreadBoards = 0,
        AngleSpreadDegrees = 0,
        SpeedSpreadMilesPerHour = 0,
        RevsSpreadRpm = 0,
        MeasurementNoiseBoards = 0,
    };

    [Fact]
    public void Throw_NoScatter_HitsTheMiddleOfEveryTarget()
    {
        Assert.Equal(10, Thrown(Exact, 1, Arrows).BoardAt(15));
        var line = Thrown(Exact, 1, TestLane.Line(15, 15, 7, 40));
        Assert.Equal((15.0, 7.0), (line.BoardAt(15), line.BoardAt(40)));

        // Source: the trade reference, derived: a line of 15 at 15 ft to 7 at 40 ft is laid down on board 19.8.
        Assert.Equal(19.8, line.Laydown!.Value.Boards);
    }

    [Fact]
    public void Release_OneDegree_CrossesAsManyBoardsAsPublished()
    {
        // Source: the trade reference, derived: 1 degree is 2.9526 boards over 15 ft and 7.8737 over 40 ft.
        Assert.Equal(2.9526, StraightPath.BoardsOver(15, 1, TestLane.Lane), 0.0001);
        Assert.Equal(7.8737, StraightPath.BoardsOver(40, 1, TestLane.Lane), 0.0001);
        Assert.Equal(12.95, Thrown(Exact, 1, Arrows).Laydown!.Value.Boards);
    }

    [Fact]
    public void Throw_Biases_ShiftTheMissByTheirSum()
    {
        var shot = Thrown(Exact with { LaydownBiasBoards = 0.5, AimBiasBoards = -1.25 }, 1, Arrows);
        Assert.Equal(9.25, shot.BoardAt(15));
        Assert.Equal(13.45, shot.Laydown!.Value.Boards);
    }

    [Fact]
    public void Throw_ManyShots_HaveTheStatedMeanAndSpread()
    {
        var settings = new SimulatedBowlerSettings { Seed = 3, LaydownSpreadBoards = 0.6, AngleSpreadDegrees = 0.3, MeasurementNoiseBoards = 0.2 };
        var shots = Shots(settings, Arrows);
        var across = shots.Select(shot => shot.BoardAt(15)!.Value).ToList();
        var spread = Math.Sqrt((0.6 * 0.6) + Math.Pow(0.3 * 2.9526, 2) + (0.2 * 0.2));

        // Standard error of a mean is s/sqrt(n), of a standard deviation s/sqrt(2n).
        Assert.Equal(10, Mean(across), 4 * spread / Math.Sqrt(Many));
        Assert.Equal(spread, Deviation(across), 4 * spread / Math.Sqrt(2.0 * Many));
        var laydown = shots.Select(shot => shot.Laydown!.Value.Boards).ToList();
        var laydownSpread = Math.Sqrt((0.6 * 0.6) + (0.2 * 0.2));
        Assert.Equal(10 + 2.9526, Mean(laydown), 4 * laydownSpread / Math.Sqrt(Many));
        Assert.Equal(laydownSpread, Deviation(laydown), 4 * laydownSpread / Math.Sqrt(2.0 * Many));
        var speeds = shots.Select(shot => shot.Speed!.Value.Value.Value).ToList();
        Assert.Equal(17, Mean(speeds), 4 * 0.4 / Math.Sqrt(Many));
        Assert.Equal(0.4, Deviation(speeds), 4 * 0.4 / Math.Sqrt(2.0 * Many));
        var revs = shots.Select(shot => shot.Revs!.Value.Value).ToList();
        Assert.Equal(300, Mean(revs), 4 * 12 / Math.Sqrt(Many));
        Assert.Equal(12, Deviation(revs), 4 * 12 / Math.Sqrt(2.0 * Many));
    }

    [Fact]
    public void Throw_ManyShots_AreNormal()
    {
        var settings = Exact with { LaydownSpreadBoards = 1 };
        var misses = Enumerable.Range(1, Many).Select(number => SimulatedBowler.Release(settings, number, Arrows, TestLane.Lane).LaydownBoard - 12.9526).ToList();

        // Source: table of the normal distribution: 68.27 % within one standard deviation, 95.45 % within two.
        Assert.Equal(0.6827, misses.Count(miss => Math.Abs(miss) <= 1) / (double)Many, 4 * Math.Sqrt(0.6827 * 0.3173 / Many));
        Assert.Equal(0.9545, misses.Count(miss => Math.Abs(miss) <= 2) / (double)Many, 4 * Math.Sqrt(0.9545 * 0.0455 / Many));
    }

    [Fact]
    public void Throw_SameSeed_IsTheSameShotAndAnotherSeedAnother()
    {
        var settings = new SimulatedBowlerSettings { Seed = 5 };
        Assert.Equal(Thrown(settings, 12, Arrows), Thrown(settings, 12, Arrows));
        Assert.NotEqual(Thrown(settings, 12, Arrows).BoardAt(15), Thrown(settings, 13, Arrows).BoardAt(15));
        Assert.NotEqual(Thrown(settings, 12, Arrows).BoardAt(15), Thrown(settings with { Seed = 6 }, 12, Arrows).BoardAt(15));
    }

    [Fact]
    public void Throw_Fatigue_WidensAndLearningNarrows()
    {
        // After 100 shots: 1 + 0.02 * 99 = 2.98 times as wide; 0.99^99 = 0.370 times as wide.
        Assert.Equal(2.98, SimulatedBowler.SpreadFactor(new SimulatedBowlerSettings { FatigueAShot = 0.02 }, 100), 1e-9);
        Assert.Equal(0.370, SimulatedBowler.SpreadFactor(new SimulatedBowlerSettings { LearningAShot = 0.01 }, 100), 0.001);
        var tired = LateSpread(Exact with { LaydownSpreadBoards = 0.5, FatigueAShot = 0.02 });
        var steady = LateSpread(Exact with { LaydownSpreadBoards = 0.5 });
        var learnt = LateSpread(Exact with { LaydownSpreadBoards = 0.5, LearningAShot = 0.01 });
        Assert.Equal(2.98, tired / steady, 0.05);
        Assert.Equal(0.370, learnt / steady, 0.02);
    }

    [Fact]
    public void Throw_GrossErrors_ComeAtTheirRateAndSizeOnEitherSide()
    {
        var misses = Shots(Exact with { GrossErrorRate = 0.1, GrossErrorBoards = 6 }, TestLane.Single(18, 15)).Select(shot => shot.BoardAt(15)!.Value - 18).ToList();
        Assert.Equal([-6, 0, 6], misses.Distinct().Order());
        Assert.Equal(0.1, misses.Count(miss => miss != 0) / (double)Many, 4 * Math.Sqrt(0.1 * 0.9 / Many));
        var gross = misses.Where(miss => miss != 0).ToList();
        Assert.Equal(0.5, gross.Count(miss => miss > 0) / (double)gross.Count, 4 * Math.Sqrt(0.25 / gross.Count));
    }

    [Fact]
    public void Throw_MissingRate_LeavesOutThatShareOfEachValue()
    {
        var shots = Shots(new SimulatedBowlerSettings { MissingRate = 0.2 }, TestLane.Line(15, 15, 7, 40));
        var within = 4 * Math.Sqrt(0.2 * 0.8 / Many);
        Assert.Equal(0.2, shots.Count(shot => shot.Laydown is null) / (double)Many, within);
        Assert.Equal(0.2, shots.Count(shot => shot.BoardAt(15) is null) / (double)Many, within);
        Assert.Equal(0.2, shots.Count(shot => shot.BoardAt(40) is null) / (double)Many, within);
        Assert.Equal(0.2, shots.Count(shot => shot.Speed is null) / (double)Many, within);
        Assert.Equal(0.04, shots.Count(shot => shot.BoardAt(15) is null && shot.BoardAt(40) is null) / (double)Many, 4 * Math.Sqrt(0.04 * 0.96 / Many));
    }

    [Fact]
    public void Throw_LeftHander_IsTheMirrorOfTheRightHander()
    {
        var right = Thrown(new SimulatedBowlerSettings { Seed = 9 }, 4, Arrows).BoardAt(15)!.Value;
        var left = Thrown(new SimulatedBowlerSettings { Seed = 9, Hand = Hand.Left }, 4, Arrows).BoardAt(15)!.Value;
        var seenRight = TestLane.Lane.PointOf(Board.FromBoards(right), Feet.FromFeet(15), Hand.Right).Across.Value;
        var seenLeft = TestLane.Lane.PointOf(Board.FromBoards(left), Feet.FromFeet(15), Hand.Left).Across.Value;
        Assert.Equal(41.5, seenRight + seenLeft, 1e-9);
    }

    [Fact]
    public void Throw_IntoTheGutter_StaysThere()
    {
        // A path that comes back onto the lane, as no straight one does: a ball cannot.
        var shot = SimulatedBowler.Throw(Exact, 1, TestLane.Line(10, 15, 20, 45), TestLane.Lane, new ThroughTheGutter());
        Assert.Equal((-4.0, -4.0), (shot.BoardAt(15), shot.BoardAt(45)));
    }

    [Fact]
    public void Throw_WildSettings_AreStillPossibleShotsMarkedSimulated()
    {
        var wild = new SimulatedBowlerSettings
        {
            LaydownSpreadBoards = 30,
            AngleSpreadDegrees = 10,
            SpeedSpreadMilesPerHour = 20,
            RevsSpreadRpm = 500,
            MeasurementNoiseBoards = 5,
            GrossErrorRate = 0.5,
        };
        var shots = Shots(wild, TestLane.Line(15, 15, 7, 40));
        Assert.All(shots, shot => Assert.Equal(ShotSource.Simulated, shot.Source));
        Assert.Equal(Many, shots.Select(shot => shot.Id).Distinct().Count());
    }

    [Fact]
    public async Task ReadAsync_Pace_ThrowsAtWhatIsShownAndEndsWithIt()
    {
        var time = new FakeTimeProvider();
        var aims = new Queue<Aim?>([Arrows, TestLane.Single(12, 20), null]);
        var feed = new SimulatedShotFeed(
            Exact with { Hand = Hand.Left }, TestLane.Lane, _ => ValueTask.FromResult(aims.Dequeue()), TimeSpan.FromSeconds(20), time, firstNumber: 5);
        await using var items = feed.ReadAsync(TestContext.Current.CancellationToken).GetAsyncEnumerator(TestContext.Current.CancellationToken);
        var first = items.MoveNextAsync().AsTask();
        Assert.False(first.IsCompleted);
        time.Advance(TimeSpan.FromSeconds(20));
        Assert.True(await first);
        Assert.Equal(new FeedItem.ShotRead(Thrown(Exact, 5, Arrows), "Simulated bowler", Hand.Left, 5), items.Current);
        var second = items.MoveNextAsync().AsTask();
        time.Advance(TimeSpan.FromSeconds(20));
        Assert.True(await second);
        Assert.Equal(12, Assert.IsType<FeedItem.ShotRead>(items.Current).Shot.BoardAt(20));
        var end = items.MoveNextAsync().AsTask();
        time.Advance(TimeSpan.FromSeconds(20));
        Assert.False(await end);
    }

    private sealed class ThroughTheGutter : ISimulatedPath
    {
        public double BoardAt(Release release, Feet distance, LaneProfile lane) => distance.Value < 30 ? -1 : 20;
    }

    private static Shot Thrown(SimulatedBowlerSettings settings, int number, Aim aim) => SimulatedBowler.Throw(settings, number, aim, TestLane.Lane);

    private static List<Shot> Shots(SimulatedBowlerSettings settings, Aim aim) => [.. Enumerable.Range(1, Many).Select(number => Thrown(settings, number, aim))];

    private static double LateSpread(SimulatedBowlerSettings settings) =>
        Deviation([.. Enumerable.Range(1, 2000).Select(seed => Thrown(settings with { Seed = (ulong)seed }, 100, Arrows).BoardAt(15)!.Value)]);

    private static double Mean(List<double> values) => values.Average();

    private static double Deviation(List<double> values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1));
    }
}
