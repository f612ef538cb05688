using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports.Tests;

/// <summary>An invented bowler's sessions with several balls: parabolas around a breakpoint, with invented scatter. No real ball is meant.</summary>
internal sealed class MadeBalls(string bowler = "Ann Lee", Hand hand = Hand.Right, bool simulated = false)
{
    public static readonly DateTimeOffset Start = new(2026, 9, 1, 18, 0, 0, TimeSpan.Zero);

    private readonly List<BallsSource> _sources = [];

    public IReadOnlyList<BallsSource> Sources => _sources;

    /// <summary>Balls thrown in turn at a line.</summary>
    /// <param name="line">Board and feet of each target.</param>
    /// <param name="throws">Of each ball.</param>
    /// <param name="hours">After the start.</param>
    /// <param name="balls">Names; each turns later and more sharply than the one before it by <paramref name="apart"/>.</param>
    /// <param name="apart">Boards further inside at the pins, for each ball.</param>
    /// <param name="change">Changes a reading before it is checked: number of the throw, its reading.</param>
    /// <param name="grade">Changes a graded shot.</param>
    /// <param name="usual">The ball of the session.</param>
    public MadeBalls Session(
        (double Board, double Feet)[] line, int throws, double hours, string?[] balls, double apart = 2.5, Action<int, ShotReading>? change = null,
        Func<GradedShot, GradedShot>? grade = null, string? usual = null)
    {
        var id = $"balls-{_sources.Count + 1}";
        var at = Start.AddHours(hours);
        var setup = new SessionSetup
        {
            SessionId = id,
            Station = 3,
            At = at,
            Bowler = bowler,
            Hand = hand,
            Ball = usual,
            DrillId = "two-point-line",
            DrillHash = new string('0', 64),
            Lane = LaneProfileReader.Default,
            Seed = 7,
            Simulated = simulated,
        };
        var aim = new Aim("line", line.Select(target => new NamedTarget(
            $"at {target.Feet}", new Target(Board.FromBoards(target.Board), BoardOffset.FromBoards(3), Feet.FromFeet(target.Feet)))).ToValueList());
        var builder = new SessionRecordBuilder();
        builder.Add(new SessionEvent.BlockBegan(0, 0, "line", BlockKind.Training, 1));
        for (var number = 1; number <= throws * balls.Length; number++)
        {
            var ball = (number - 1) % balls.Length;
            var reading = Reading((ulong)(number + (1000 * _sources.Count)), line[0].Board, ball, apart);
            reading.Ball = balls[ball];
            change?.Invoke(number, reading);
            var shot = reading.Check(out var problems) ?? throw new ArgumentException(problems.ToString());
            var results = Grader.Grade(shot, aim, GradeBands.Default);
            var graded = new GradedShot
            {
                Number = number,
                At = at.AddMinutes(number),
                Shot = shot,
                Run = 0,
                Aim = aim.Name,
                Targets = results,
                Held = Grader.Held(results),
                Points = Grader.Points(results),
                Comparability = Comparability.Yes,
                LaunchAngle = LaunchAngles.Of(shot, LaneProfileReader.Default),
            };
            builder.Add(new SessionEvent.ShotGraded(grade is null ? graded : grade(graded), [], Told.Nothing));
        }

        builder.Add(new SessionEvent.SessionEnded("done"));

        _sources.Add(new BallsSource(setup, "Two-point line", builder.Result()));
        return this;
    }

    public BallsReport Report(BallsQuestion? question = null, int more = 0) =>
        BallsBuilder.OfRecord(question ?? new BallsQuestion { Bowler = bowler }, _sources, more, Start.AddDays(30));

    /// <summary>Two lines on one evening, three balls on the first: an invented scenario.</summary>
    public static MadeBalls Evening(string bowler = "Ann Lee", Hand hand = Hand.Right, bool simulated = false) => new MadeBalls(bowler, hand, simulated)
        .Session([(15, 15), (8, 40)], 14, 0, ["Red", "Blue"], change: Slip, grade: Void)
        .Session([(20, 15), (12, 40)], 10, 0.75, ["Red", "Blue"], apart: 0.4);

    private static void Slip(int number, ShotReading reading)
    {
        if (number == 9)
        {
            reading.LaunchAngleDegrees += 3;
        }
        else if (number == 16)
        {
            reading.BreakpointBoard += 6;
        }
    }

    private static GradedShot Void(GradedShot shot) => shot.Number == 21 ? shot with { VoidReason = "the pins were not set" } : shot;

    private static ShotReading Reading(ulong seed, double arrows, int ball, double apart)
    {
        // Before the breakpoint a parabola to the outside, after it one inward that bends more: three places on either side of it are seen.
        var (laydown, angle, turn) = (arrows + 6 + (0.7 * Normal(seed, 0)), 2.2 + (0.25 * Normal(seed, 1)), 40 + (1.2 * ball) + (0.6 * Normal(seed, 2)));
        var outmost = laydown - (angle * 3.4);
        var before = (laydown - outmost) / (turn * turn);
        var after = (8 + (apart * ball) + (0.5 * Normal(seed, 3))) / (20 * 20.0);
        var reading = new ShotReading
        {
            LaydownBoard = laydown + (0.05 * Normal(seed, 4)),
            LaunchAngleDegrees = angle,
            SpeedMilesPerHour = 17 + (0.2 * Normal(seed, 5)),
            SpeedPlace = SpeedPlace.Release,
            BreakpointBoard = outmost + (0.05 * Normal(seed, 6)),
            BreakpointFeet = turn,
            EntryBoard = At(60),
            EntryAngleDegrees = 4.5 + (0.3 * apart * ball / 2.5) + (0.2 * Normal(seed, 7)),
        };
        foreach (var feet in (ReadOnlySpan<double>)[15, 30, 45, 52])
        {
            reading.AddCrossing(feet, At(feet) + (0.05 * Normal(seed, 8 + (ulong)feet)));
        }

        return reading;

        double At(double feet) => Math.Clamp(outmost + ((feet < turn ? before : after) * (feet - turn) * (feet - turn)), 1, 39);
    }

    private static double Normal(ulong seed, ulong place) => StandardNormal.Quantile((0.998 * SeededRandom.Unit(seed, place)) + 0.001);
}
