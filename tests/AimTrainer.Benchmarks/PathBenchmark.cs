using System.Diagnostics;
using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Motion;

namespace AimTrainer.Benchmarks;

/// <summary>Ball paths: one alone against SciPy in the same run, a million, and how the cost grows with rows and paths.</summary>
internal static class PathBenchmark
{
    private const int Rounds = 15;
    private const int OneAlone = 400;
    private const int Million = 1_000_000;

    private static readonly Release _caseTwelve = new(Hand.Right, 22, 2.6, 8, 350) { AxisRotationDegrees = 45, AxisTiltDegrees = 12 };

    public static async Task RunAsync()
    {
        await AgainstSciPyAsync();
        ManyPaths();
        Growth();
    }

    private static async Task AgainstSciPyAsync()
    {
        var lane = InventedLane.House();
        var one = new PathEnd[1];
        var release = new[] { _caseTwelve };
        for (var i = 0; i < 20_000; i++)
        {
            Paths.Run(lane, Ball.Usual, release, one);
        }

        var (ours, traced, theirs, ratios) = (new List<double>(), new List<double>(), new List<PathSciPy.Times>(), new List<double>());
        for (var round = 0; round < Rounds; round++)
        {
            var times = await PathSciPy.MeasureAsync();
            var from = Stopwatch.GetTimestamp();
            for (var i = 0; i < OneAlone; i++)
            {
                Paths.Run(lane, Ball.Usual, release, one);
            }

            ours.Add(Stopwatch.GetElapsedTime(from).TotalMicroseconds / OneAlone);
            from = Stopwatch.GetTimestamp();
            for (var i = 0; i < OneAlone; i++)
            {
                Paths.Trace(lane, Ball.Usual, _caseTwelve);
            }

            traced.Add(Stopwatch.GetElapsedTime(from).TotalMicroseconds / OneAlone);
            if (times is null)
            {
                break;
            }

            theirs.Add(times);
            ratios.Add(times.Dop853Milliseconds * 1000 / ours[^1]);
        }

        Print($"path: one on the house lane {new Spread(ours)} us (with all its points {new Spread(traced)} us); board at 60 ft {one[0].BoardAt60:0.000000}");
        if (theirs.Count == 0)
        {
            Print($"path: SciPy is not there (apt-get install python3-scipy): no ratio");
            return;
        }

        var (dop853, rk45) = (new Spread(theirs.Select(one => one.Dop853Milliseconds)), new Spread(theirs.Select(one => one.Rk45Milliseconds)));
        Print($"path: SciPy {theirs[0].Version} DOP853 rtol 1e-7 on the same release {dop853} ms, board {theirs[0].Dop853Board:0.000000}");
        Print($"path: SciPy {theirs[0].Version} RK45 rtol 1e-7 on the same release {rk45} ms, board {theirs[0].Rk45Board:0.000000}");
        Print($"path: ratio to DOP853 {new Spread(ratios)}; it measures Python's overhead as much as the method; {Rounds} rounds, turn by turn, one thread each");
    }

    private static void ManyPaths()
    {
        var lane = InventedLane.House();
        Release[] releases = [.. Enumerable.Range(0, Million).Select(Random)];
        var ends = new PathEnd[Million];
        Paths.Run(lane, Ball.Usual, releases.AsSpan(0, 20_000), ends.AsSpan(0, 20_000));
        var (one, all) = (new List<double>(), new List<double>());
        for (var round = 0; round < 5; round++)
        {
            var from = Stopwatch.GetTimestamp();
            Paths.Run(lane, Ball.Usual, releases, ends);
            one.Add(Stopwatch.GetElapsedTime(from).TotalSeconds);
            from = Stopwatch.GetTimestamp();
            Paths.RunOnCores(lane, Ball.Usual, releases, ends, 2);
            all.Add(Stopwatch.GetElapsedTime(from).TotalSeconds);
        }

        var arrived = ends.Count(end => end.Finish == PathFinish.Pins);
        Print($"path: 1,000,000 on the house lane {new Spread(one)} s on one thread, {new Spread(all)} s on two; {arrived} reach the pins");
    }

    private static void Growth()
    {
        foreach (var paths in (int[])[1, 4, 100, 10_000, 100_000])
        {
            Print($"path: {paths} paths at once: {Each(InventedLane.House(), paths):0.00} us each, one thread");
        }

        foreach (var rows in (int[])[2, 5, 10, 20, 40])
        {
            Print($"path: pattern of {rows} rows: {Each(Rows(rows), 10_000):0.00} us each of 10000, one thread");
        }
    }

    /// <summary>The best of several rounds, microseconds a path.</summary>
    private static double Each(LaneSurface lane, int paths)
    {
        Release[] releases = [.. Enumerable.Range(0, paths).Select(Random)];
        var (ends, best) = (new PathEnd[paths], double.PositiveInfinity);
        var calls = Math.Max(1, 20_000 / paths);
        for (var round = 0; round < 10; round++)
        {
            var from = Stopwatch.GetTimestamp();
            for (var call = 0; call < calls; call++)
            {
                Paths.Run(lane, Ball.Usual, releases, ends);
            }

            best = Math.Min(best, Stopwatch.GetElapsedTime(from).TotalMicroseconds / calls / paths);
        }

        return best;
    }

    /// <summary>The house pattern written in more or fewer rows over the same 40 ft.</summary>
    private static LaneSurface Rows(int rows)
    {
        var house = InventedLane.House();
        return new LaneSurface(
            OilPattern.FromRows(
                [.. Enumerable.Range(0, rows).Select(i => 40.0 * i / (rows - 1)).Select(feet => (feet, Enumerable.Range(1, LaneProfile.BoardCount)
                    .Select(board => house.OilAt(feet, board)).ToValueList()))],
                inSteps: false),
            house.DryFriction,
            house.OilFriction,
            house.OilScaleUnits);
    }

    private static Release Random(int number)
    {
        double Unit(int of) => SeededRandom.Unit(7, ((ulong)number * 8) + (ulong)of);
        return new Release(Hand.Right, 15 + (12 * Unit(0)), 0.5 + (3 * Unit(1)), 7 + (1.8 * Unit(2)), 250 + (250 * Unit(3)))
        {
            AxisRotationDegrees = 35 + (30 * Unit(4)),
            AxisTiltDegrees = 5 + (12 * Unit(5)),
        };
    }

    private static void Print(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
