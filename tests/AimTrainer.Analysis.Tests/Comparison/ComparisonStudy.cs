using AimTrainer.Domain;
using AimTrainer.Motion;

namespace AimTrainer.Analysis.Tests;

/// <summary>
/// Comparisons of two balls whose paths are those of the motion model, so that the true difference is known. Everything is invented: lane,
/// bowler, balls, reading errors.
/// </summary>
internal sealed class ComparisonStudy
{
    /// <summary>Scatter of the bowler: boards, degrees, mph, rpm; and of the axis rotation, degrees, which nobody measures.</summary>
    private const double LaydownScatter = 0.7, AngleScatter = 0.25, SpeedScatter = 0.25, RevsScatter = 10, RotationScatter = 2;

    private static readonly double[] _places = [15, 25, 35, 45, 55];

    private readonly ComparisonStudyScenario _scenario;
    private readonly LaneSurface[] _worn;
    private readonly Ball[] _balls;
    private readonly ulong _seed;

    public ComparisonStudy(ComparisonStudyScenario scenario, ulong seed)
    {
        (_scenario, _seed) = (scenario, seed);
        _balls = [Ball.Usual, Ball.Usual with { Grip = scenario.Grip }];
        _worn = new LaneSurface[2 * scenario.ThrowsEach];
        _worn[0] = InventedLane.House();
        var wear = new Wear(scenario.WearAThrow, Wear.UsualTrackBoards);
        for (var i = 1; i < _worn.Length; i++)
        {
            _worn[i] = scenario.WearAThrow == 0 ? _worn[0] : wear.After(_worn[i - 1], Paths.Trace(_worn[i - 1], Ball.Usual, Meant(0)));
        }

    }

    /// <summary>One comparison, and the true differences of its own throws: the other ball less the reference ball, each throw with both.</summary>
    public (ComparisonReport Report, IReadOnlyDictionary<string, double> Truth) Compare(int number)
    {
        var throws = Throws(number, out var truth);
        return (BallComparer.Compare(throws, new ComparisonSettings { Reference = "reference", Lane = LaneProfileReader.Default }), truth);
    }

    /// <summary>Many comparisons, on all cores; the same whatever their number.</summary>
    public ComparisonStudyResult Run(int comparisons)
    {
        var reports = new (ComparisonReport, IReadOnlyDictionary<string, double>)[comparisons];
        Parallel.For(0, comparisons, i => reports[i] = Compare(i));
        return ComparisonStudyResult.Of(reports);
    }

    private List<ComparedThrow> Throws(int comparison, out IReadOnlyDictionary<string, double> truth)
    {
        var sums = new Dictionary<string, (double Sum, int Count)>();
        var throws = new List<ComparedThrow>();
        for (var i = 0; i < 2 * _scenario.ThrowsEach; i++)
        {
            var ball = _scenario.InBlocks ? i / _scenario.ThrowsEach : i % 2;
            var chance = new Chance(_seed + ((ulong)comparison * 1_000_003) + 17, (ulong)i * 64);
            throws.Add(new ComparedThrow(i + 1, Observed(_worn[i], ball, chance, sums), ball == 0 ? "reference" : "other", null));
        }

        truth = sums.ToDictionary(sum => sum.Key, sum => sum.Value.Sum / sum.Value.Count);
        return throws;
    }

    private static Release Meant(double fasterMph) => new(Hand.Right, 22, 2.6, (17.5 + fasterMph) * Release.MetresPerSecondPerMph, 350)
    {
        AxisRotationDegrees = 45,
        AxisTiltDegrees = 12,
    };

    private static Release Scattered(double fasterMph, Chance chance)
    {
        var meant = Meant(fasterMph);
        return meant with
        {
            LaydownBoard = meant.LaydownBoard + (LaydownScatter * chance.Normal()),
            LaunchAngleDegrees = meant.LaunchAngleDegrees + (AngleScatter * chance.Normal()),
            SpeedMetresPerSecond = meant.SpeedMetresPerSecond + (SpeedScatter * Release.MetresPerSecondPerMph * chance.Normal()),
            RevsRpm = meant.RevsRpm + (RevsScatter * chance.Normal()),
            AxisRotationDegrees = meant.AxisRotationDegrees + (RotationScatter * chance.Normal()),
        };
    }

    private Shot Observed(LaneSurface lane, int ball, Chance chance, Dictionary<string, (double Sum, int Count)> truth)
    {
        var release = Scattered(ball * _scenario.FasterMph, chance);
        var gross = chance.Unit() < _scenario.GrossShare;
        var slip = gross && chance.Unit() < 0.5;
        if (slip)
        {
            release = release with { LaunchAngleDegrees = release.LaunchAngleDegrees + ((chance.Unit() < 0.5 ? -1 : 1) * (1.5 + chance.Unit())) };
        }

        else
        {
            AddTruth(lane, release, truth);
        }

        var path = Paths.Trace(lane, _balls[ball], release);
        var reading = Reading(path, release, chance);
        if (gross && !slip)
        {
            // Misread at one place, as a camera does that follows something else.
            var off = (chance.Unit() < 0.5 ? -1 : 1) * (4 + (4 * chance.Unit()));
            if (chance.Unit() < 0.5)
            {
                reading.EntryBoard = reading.EntryBoard is { } entry ? Math.Clamp(entry + off, 0.5, 39.5) : null;
            }
            else
            {
                reading.BreakpointBoard = reading.BreakpointBoard is { } board ? Math.Clamp(board + off, 0.5, 39.5) : null;
            }
        }

        return reading.Check(out var problems) ?? throw new InvalidOperationException(problems.ToString());
    }

    private static ShotReading Reading(BallPath path, Release release, Chance? chance)
    {
        double Off(double spread) => chance is null ? 0 : spread * chance.Normal();
        var end = path.End;
        var reading = new ShotReading
        {
            LaydownBoard = release.LaydownBoard + Off(0.05),
            LaunchAngleDegrees = release.LaunchAngleDegrees + Off(0.03),
            SpeedMilesPerHour = release.SpeedMph + Off(0.05),
            SpeedPlace = SpeedPlace.Release,
            RevsRpm = release.RevsRpm + Off(2),
        };
        foreach (var feet in _places.Where(feet => feet < end.EndFeet))
        {
            reading.AddCrossing(feet, path.At(feet).Board + Off(0.08));
        }

        if (end.Finish == PathFinish.Pins)
        {
            reading.EntryBoard = end.BoardAt60 + Off(0.08);
            reading.EntryAngleDegrees = end.AngleAt60Degrees + Off(0.1);
        }
        else
        {
            // It lies in the gutter, and is seen there.
            reading.EntryBoard = ShotReading.LowestBoard;
        }

        if (!double.IsNaN(end.BreakpointFeet))
        {
            reading.BreakpointBoard = end.BreakpointBoard + Off(0.08);
            reading.BreakpointFeet = Math.Clamp(end.BreakpointFeet + Off(0.5), 0, 60);
        }

        return reading;
    }

    /// <summary>What the good throws would have differed by had each been thrown with either ball, without reading errors.</summary>
    private void AddTruth(LaneSurface lane, Release release, Dictionary<string, (double Sum, int Count)> sums)
    {
        var shots = _balls.Select(ball => Reading(Paths.Trace(lane, ball, release), release, null).Check(out _)!).ToList();
        if (shots.Exists(shot => shot.Entry is { } entry && entry < Board.NearEdge))
        {
            return;
        }

        foreach (var (name, first, second) in Measured(shots[0]).Zip(Measured(shots[1]), (a, b) => (a.Name, a.Value, b.Value)))
        {
            if (second - first is { } difference)
            {
                var (sum, count) = sums.GetValueOrDefault(name);
                sums[name] = (sum + difference, count + 1);
            }
        }
    }

    private static IEnumerable<(string Name, double? Value)> Measured(Shot shot) =>
    [
        ("entryBoard", shot.Entry?.Boards),
        ("breakpointBoard", shot.Breakpoint?.Board.Boards),
        ("breakpointFeet", shot.Breakpoint?.Distance?.Value),
        ("entryAngle", shot.EntryAngle?.Value),
        ("sharpness", Sharpness.Of(shot, LaneProfileReader.Default)),
    ];

    /// <summary>Seeded numbers in a row.</summary>
    private sealed class Chance(ulong seed, ulong at)
    {
        private ulong _at = at;

        public double Unit() => SeededRandom.Unit(seed, _at++);

        // Source: Box and Muller, Ann. Math. Stat. 29 (1958) 610-611.
        public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Unit())) * Math.Cos(2 * Math.PI * Unit());
    }
}
