using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

public sealed class SlowIntegratorTests
{
    private const int Throws = 120;

    [Fact]
    public void Trace_RandomThrowsOnWildLanes_AgreesWithASlowIntegrator()
    {
        // Oil here jumps by up to 60 units from board to board; a fine step is asked for.
        var (compared, gutters) = (0, 0);
        for (var seed = 0UL; seed < Throws; seed++)
        {
            var thrown = RandomThrow.From(seed);
            var fine = thrown with { Lane = Fine(thrown.Lane) };
            var path = fine.Trace();
            if (SlowIntegrator.Run(thrown) is not { } slow)
            {
                Assert.Equal(PathFinish.Gutter, path.End.Finish);
                gutters++;
                continue;
            }

            Assert.Equal(PathFinish.Pins, path.End.Finish);
            Assert.Equal(slow.Board, path.End.BoardAt60, 1e-3);
            Assert.Equal(slow.AngleDegrees, path.End.AngleAt60Degrees, 1e-3);
            Assert.Equal(slow.Seconds, path.End.EndSeconds, 1e-4);
            compared++;
        }

        Assert.True(compared >= Throws / 3 && gutters > 0, $"{compared} to the pins, {gutters} in a gutter");
    }

    [Fact]
    public void Run_HouseLaneAtTheDefaultStep_StaysWithinTheDigitsOfTheDocs()
    {
        var (lane, fine) = (PathCases.Lane("house40"), PathCases.Lane("house40", 0.005));
        Release[] releases =
        [
            .. Enumerable.Range(0, 2000).Select(i =>
            {
                double Unit(int k) => SeededRandom.Unit(6, (ulong)((i * 10) + k));
                return new Release(i % 2 == 0 ? Hand.Right : Hand.Left, 12 + (18 * Unit(0)), 4 * Unit(1), 6.5 + (2.5 * Unit(2)), 150 + (400 * Unit(3)))
                {
                    AxisRotationDegrees = 20 + (60 * Unit(4)),
                    AxisTiltDegrees = 20 * Unit(5),
                    LaydownFeet = 2 * Unit(6),
                };
            }),
        ];
        var (ends, exact) = (new PathEnd[releases.Length], new PathEnd[releases.Length]);
        Paths.Run(lane, Ball.Usual, releases, ends);
        Paths.Run(fine, Ball.Usual, releases, exact);
        var both = ends.Zip(exact).Where(pair => pair.First.Finish == PathFinish.Pins && pair.Second.Finish == PathFinish.Pins).ToList();

        Assert.InRange(both.Count, 1200, 2000);
        Assert.All(both, pair => Assert.Equal(pair.Second.BoardAt60, pair.First.BoardAt60, 1e-3));
        Assert.All(both, pair => Assert.Equal(pair.Second.AngleAt60Degrees, pair.First.AngleAt60Degrees, 1e-3));
        Assert.All(both, pair => Assert.Equal(pair.Second.ContactBoard, pair.First.ContactBoard, 1e-3));
        Assert.All(both, pair => Assert.Equal(pair.Second.EndSeconds, pair.First.EndSeconds, 1e-5));
    }

    [Fact]
    public void Trace_PatternsOfMachinePasses_StayWithinTheDigitsOfTheDocs()
    {
        var compared = 0;
        for (var seed = 0UL; seed < 1200; seed++)
        {
            // Two passes make four stretches, rows make five.
            var thrown = RandomThrow.From(seed);
            if (thrown.Lane.Oil.Count != 4 || thrown.Trace().End is not { Finish: PathFinish.Pins } end)
            {
                continue;
            }

            var exact = (thrown with { Lane = Fine(thrown.Lane, 0.005) }).Trace().End;
            Assert.Equal(exact.BoardAt60, end.BoardAt60, 1e-3);
            Assert.Equal(exact.AngleAt60Degrees, end.AngleAt60Degrees, 1e-3);
            compared++;
        }

        Assert.InRange(compared, 20, 200);
    }

    [Fact]
    public void Trace_WildRandomOil_StaysWithinTheDigitsOfTheDocs()
    {
        // 0 to 60 units on every board, whatever its neighbour has: no machine lays such oil.
        var off = new List<double>();
        for (var seed = 0UL; seed < 400; seed++)
        {
            var thrown = RandomThrow.From(seed);
            if (thrown.Lane.Oil.Count == 5 && thrown.Trace().End is { Finish: PathFinish.Pins } end)
            {
                off.Add(Math.Abs((thrown with { Lane = Fine(thrown.Lane, 0.005) }).Trace().End.BoardAt60 - end.BoardAt60));
            }
        }

        Assert.InRange(off.Count, 80, 300);
        Assert.All(off, one => Assert.InRange(one, 0, 1e-3));
    }

    private static LaneSurface Fine(LaneSurface lane, double stepMetres = 0.01) => new(
        lane.Oil, lane.DryFriction, lane.OilFriction, lane.OilScaleUnits, lane.ArrowsFeet, lane.WidthInches, stepMetres);
}
