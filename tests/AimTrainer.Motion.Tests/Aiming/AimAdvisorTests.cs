using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

public sealed class AimAdvisorTests
{
    private static readonly LaneBelief _house = LaneBelief.Exactly(InventedLane.House());
    private static readonly PocketWindow _wide = new(17, 18, 2, 6);
    private static readonly AimGrid _around = new(18, 26, 1, 1, 4, 0.5);
    private static readonly AimSettings _settings = new() { Window = _wide, Grid = _around, MapThrows = 200, Throws = 1500 };

    private static AimBowler Bowler(params double[] spreads) => new(Hand.Right, 17.9, 350, 45, Scatter.Of(spreads.ToValueList())) { AxisTiltDegrees = 12 };

    [Fact]
    public void Advise_SymmetricByConstruction_AimsAtTheMiddleWithTheChanceOfTheNormalDistribution()
    {
        // A ball that does not hook, a lane that is the same everywhere, a window in the middle: board and angle miss it by
        // laydown - distance * tan(angle), normal both, so the chance is an integral over one normal number.
        var bowler = new AimBowler(Hand.Right, 18, 0, 0, Scatter.Of([0.4, 0.12, 0.3, 0]));
        var window = new PocketWindow(19, 21, -0.2, 0.2, WindowPlace.At60Feet);
        var settings = new AimSettings { Window = window, Grid = new AimGrid(17, 23, 0.5, -1, 1, 0.1), MapThrows = 500, Throws = 8000 };
        var advice = Advise(LaneBelief.Exactly(LaneSurface.Even(0.2)), bowler, settings);

        Assert.InRange(advice.Best.Line.LaydownBoard, 19.5, 20.5);
        Assert.InRange(advice.Best.Line.LaunchAngleDegrees, -0.1, 0.1);
        var exact = Exact(advice.Best.Line, 0.4, 0.12);
        Assert.InRange(advice.Best.Chance - exact, -4 * advice.ChanceError, 4 * advice.ChanceError);
        Assert.InRange(exact, Exact(new AimLine(20, 0), 0.4, 0.12) - 0.02, 1);
        Assert.Equal(0, advice.Worths[(int)ScatterPart.Speed].Points);
    }

    [Fact]
    public void Advise_HouseLane_FindsTheLineThatBruteForceFinds()
    {
        var bowler = Bowler(0.5, 0.2, 0.3, 12);
        var advice = Advise(_house, bowler, _settings);

        // Every line of a finer grid, thrown one at a time with numbers of another generator.
        var best = (Line: default(AimLine), Chance: 0.0);
        foreach (var line in new AimGrid(18, 26, 0.5, 1, 4, 0.25).Lines)
        {
            var chance = Thrown(bowler, bowler.Scatter, line, 500, 11);
            best = chance > best.Chance ? (line, chance) : best;
        }

        var (mine, brute) = (Thrown(bowler, bowler.Scatter, advice.Best.Line, 6000, 12), Thrown(bowler, bowler.Scatter, best.Line, 6000, 12));
        Assert.InRange(mine, brute - 0.02, 1);
        Assert.InRange(advice.Best.Chance - mine, -4 * advice.ChanceError, 4 * advice.ChanceError);
    }

    [Fact]
    public void Advise_MoreScatterOfLaydownOrAngle_NeverRaisesTheBestChance()
    {
        // More independent scatter of laydown or angle averages the old chance over other lines, and no average exceeds the best.
        foreach (var part in new[] { 0, 1 })
        {
            var before = 1.0;
            foreach (var times in new[] { 0.5, 1, 1.5, 2, 3 })
            {
                double[] spreads = [0.5, 0.2, 0.3, 12];
                spreads[part] *= times;
                var advice = Advise(_house, Bowler(spreads), _settings with { Throws = 800 });
                Assert.InRange(advice.Best.Chance, 0, before + (2 * advice.ChanceError));
                before = advice.Best.Chance;
            }
        }
    }

    [Fact]
    public void Advise_WorthOfHalvingASpread_IsWhatThrowingItAnewShows()
    {
        var bowler = Bowler(0.6, 0.25, 0.4, 15);
        var advice = Advise(_house, bowler, _settings);
        foreach (var worth in advice.Worths)
        {
            const int Throws = 12_000;
            var now = Thrown(bowler, bowler.Scatter, advice.Best.Line, Throws, 21);
            var then = Thrown(bowler, bowler.Scatter.Times(worth.Part, 0.5), advice.Best.Line, Throws, 22);
            var error = 100 * Math.Sqrt(((now * (1 - now)) + (then * (1 - then))) / Throws);
            Assert.InRange(worth.Points - (100 * (then - now)), -4 * (error + worth.ErrorPoints), 4 * (error + worth.ErrorPoints));
        }

        Assert.Equal(advice.Worths.AsEnumerable().MaxBy(worth => worth.Points)!.Part, advice.Practise);
    }

    [Fact]
    public void Advise_LaneThatIsNotKnown_TellsARange()
    {
        var numbers = LaneNumbers.Of(InventedLane.House());
        var unsure = new LaneBelief(InventedLane.House(), numbers, [1.6e-5, 0, 0, 0, 4e-4, 0, 0, 0, 1.0]);
        var advice = Advise(unsure, Bowler(0.4, 0.15, 0.2, 8), _settings with { Throws = 200, Lanes = 20 });
        var sure = Advise(_house, Bowler(0.4, 0.15, 0.2, 8), _settings with { Throws = 400 });

        Assert.InRange(advice.HighChance - advice.LowChance, 0.05, 1);
        Assert.InRange(advice.Best.Chance, advice.LowChance, advice.HighChance);
        Assert.Equal((sure.LowChance, 1), (sure.HighChance, sure.Lanes));
    }

    [Fact]
    public void Advise_RoomForError_EndsWhereTheThrowLeavesTheWindow()
    {
        var bowler = Bowler(0.4, 0.15, 0.2, 8);
        var advice = Advise(_house, bowler, _settings);
        var room = advice.Room!;
        bool Reaches(double boards) =>
            _wide.Has(Paths.Trace(InventedLane.House(), Ball.Usual, bowler.Meant(advice.Best.Line with { LaydownBoard = advice.Best.Line.LaydownBoard + boards })).End);

        Assert.True(Reaches(room.ParallelInward) && Reaches(room.ParallelOutward));
        Assert.False(Reaches(room.ParallelInward + 0.06) || Reaches(room.ParallelOutward - 0.06));
        Assert.InRange(room.ArrowsInward, 0, room.ParallelInward);
    }

    [Fact]
    public void Advise_LeftHander_GetsTheMirror() => Assert.Equal(
        Advise(_house, Bowler(0.5, 0.2, 0.3, 12), _settings with { Throws = 200 }).Best,
        Advise(_house, Bowler(0.5, 0.2, 0.3, 12) with { Hand = Hand.Left }, _settings with { Throws = 200 }).Best);

    [Fact]
    public void Advise_WindowThatNoLineReaches_SaysSo()
    {
        var advice = Advise(_house, Bowler(0.5, 0.2, 0.3, 12), _settings with { Window = new PocketWindow(17, 18, 12, 15), Throws = 200 });
        Assert.False(advice.ReachesWindow);
        Assert.InRange(advice.Best.BoardChance, 0.05, 1);
        Assert.Null(advice.Room);
        Assert.Null(advice.Practise);
    }

    [Fact]
    public void Advise_WhatCannotBe_IsRefusedWithWhatIsAllowed()
    {
        var bowler = Bowler(0.5, 0.2, 0.3, 12);
        Refused("a window of boards 18 to 17", () => Advise(_house, bowler, _settings with { Window = new PocketWindow(18, 17, 4, 6) }));
        Refused("laydowns 30 to 20", () => Advise(_house, bowler, _settings with { Grid = _around with { FirstBoard = 30, LastBoard = 20 } }));
        Refused("allowed: 50 to 100000", () => Advise(_house, bowler, _settings with { Throws = 1 }));
        Refused("the speed in m/s is NaN", () => Advise(_house, bowler with { SpeedMph = double.NaN }, _settings));
        Refused("the spread of the launch angle is NaN", () => Scatter.Of([0.5, double.NaN, 0.3, 12]));
        Refused("correlations", () => Scatter.Of([1, 1, 1, 1], [1, 0.9, -0.9, 0, 0.9, 1, 0.9, 0, -0.9, 0.9, 1, 0, 0, 0, 0, 1]));

        static void Refused(string message, Func<object> make) => Assert.Contains(message, Assert.Throws<ArgumentException>(make).Message, StringComparison.Ordinal);
    }

    private static AimAdvice Advise(LaneBelief lane, AimBowler bowler, AimSettings settings) =>
        AimAdvisor.Advise(lane, Ball.Usual, bowler, settings, null, TestContext.Current.CancellationToken);

    /// <summary>The share of throws, drawn by another generator and method (Box and Muller), that reach the window.</summary>
    private static double Thrown(AimBowler bowler, Scatter scatter, AimLine line, int throws, int seed)
    {
        var random = new Random(seed);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var meant = bowler.Meant(line);
        var releases = Enumerable.Range(0, throws).Select(_ => meant with
        {
            LaydownBoard = meant.LaydownBoard + (scatter.Spreads[0] * Normal()),
            LaunchAngleDegrees = meant.LaunchAngleDegrees + (scatter.Spreads[1] * Normal()),
            SpeedMetresPerSecond = meant.SpeedMetresPerSecond + (scatter.Spreads[2] * Normal() * Release.MetresPerSecondPerMph),
            RevsRpm = meant.RevsRpm + (scatter.Spreads[3] * Normal()),
        }).ToArray();
        var ends = new PathEnd[throws];
        Paths.Run(InventedLane.House(), Ball.Usual, releases, ends);
        return ends.Count(end => end.ContactBoard is >= 17 and <= 18 && end.ContactAngleDegrees is >= 2 and <= 6) / (double)throws;
    }

    private static double Exact(AimLine line, double boards, double degrees)
    {
        const int Pieces = 4000;
        const double Feet = 60, BoardInches = 41.5 / 39;
        var sum = 0.0;
        for (var i = 0; i < Pieces; i++)
        {
            var angle = -0.2 + (0.4 * (i + 0.5) / Pieces);
            var at = line.LaydownBoard + (Math.Tan(angle * Math.PI / 180) * Feet * 12 / BoardInches);
            sum += StandardNormal.Density((angle + line.LaunchAngleDegrees) / degrees) / degrees * (0.4 / Pieces)
                * (StandardNormal.Cdf((21 - at) / boards) - StandardNormal.Cdf((19 - at) / boards));
        }

        return sum;
    }
}
