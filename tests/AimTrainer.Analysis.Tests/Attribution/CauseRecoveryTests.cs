using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

/// <summary>Causes that were put in come out again: 95 % limits hold the truth in at least 93 % of 1,000 sets.</summary>
public sealed class CauseRecoveryTests
{
    private const int Sets = 1_000;
    private const int ShotsASet = 24;
    private const int Least = 930;

    private static readonly AccuracySettings Settings = new() { Lane = LaneProfileReader.Default, NoiseBoards = 0.1 };
    private static readonly (double Board, double Feet) Near = (22, 15);
    private static readonly (double Board, double Feet) Far = (14, 42);

    // Boards a foot in a degree, near 0.
    private static double SlopeADegree => Math.Abs(StraightLine.SlopeOf(1, Settings.Lane));

    [Fact]
    public void Result_StraightBall_RecoversLaydownAngleAndShares()
    {
        var bowler = new ModelBowler { LaydownBias = 0.9, AngleBias = -0.3, BendSpread = 0.5 };
        var (laydown, angle, bend) = (Square(bowler.LaydownSpread), Square(bowler.AngleSpread * SlopeADegree * Far.Feet), Square(bowler.BendSpread));
        var all = laydown + angle + bend;
        var straight = 0;
        var held = Held(bowler, 11, set =>
        {
            straight += set.Plan!.Kind == PlanKind.StraightThroughTargets ? 1 : 0;
            var last = set.Targets[1];
            return
            [
                ("laydown bias", set.LaydownOffBoards, 0.9),
                ("angle bias", set.AngleOffDegrees, -0.3),
                ("laydown bias downlane", last.LaydownBoards, 0.9),
                ("movement", last.BeyondBoards, 0),
                ("laydown spread", set.LaydownSpreadWithoutNoiseBoards, 0.7),
                ("angle spread", set.AngleSpreadWithoutNoiseDegrees, 0.35),
                ("movement spread", last.BentSpreadWithoutNoiseBoards, 0.5),
                ("laydown share", last.SharesWithoutNoise!.LaydownShare, laydown / all),
                ("angle share", last.SharesWithoutNoise.AngleShare, angle / all),
                ("movement share", last.SharesWithoutNoise.BeyondShare, bend / all),
                ("aim distance", set.AimDistanceWithoutNoise!.Feet, 0),
            ];
        });

        Assert.All(held, pair => Assert.True(pair.Value >= Least, $"{pair.Key}: {pair.Value} of {Sets}"));
        // Chance makes a movement of a ball that has none in at most 1 % of the sets.
        Assert.InRange(straight, 0.98 * Sets, Sets);
        // Limits that always hold would tell nothing.
        Assert.All(held, pair => Assert.True(pair.Value < 0.985 * Sets, $"{pair.Key}: {pair.Value} of {Sets}"));
    }

    [Fact]
    public void Result_BowlerWhoMakesUp_RecoversTheAimDistance()
    {
        // Each board of laydown error is taken back over 20 ft by a slope of 1/20 board a foot; what else the angle scatters is small. By hand:
        // slope = -u / 20 + e: variance V = 0.7² / 400 + e², covariance C = -0.7² / 20.
        var bowler = new ModelBowler { LaydownSpread = 0.7, Compensation = 0.05, AngleSpread = 0.1 };
        var (slope, both, laydown) = (Square(0.7 * 0.05) + Square(0.1 * SlopeADegree), -Square(0.7) * 0.05, Square(0.7));
        var miss = laydown + (2 * Far.Feet * both) + (Far.Feet * Far.Feet * slope);
        var held = Held(bowler, 12, set =>
        [
            ("aim distance", set.AimDistanceWithoutNoise!.Feet, -both / slope),
            ("laydown share", set.Targets[1].SharesWithoutNoise!.LaydownShare, (laydown + (Far.Feet * both)) / miss),
        ]);

        Assert.All(held, pair => Assert.True(pair.Value >= Least, $"{pair.Key}: {pair.Value} of {Sets}"));
        Assert.True(laydown + (Far.Feet * both) < 0, "the share of the laydown is meant to be negative here: compensation");
    }

    [Fact]
    public void Result_HookingBall_RecoversMovementAndWhatItHangsOn()
    {
        var bowler = new ModelBowler { LaydownBias = -0.6, AngleBias = 0.2, Bend = 2.5, BendSpread = 0.4, BendPerMph = -0.9, BendPerRpm = 0.015 };
        var held = Held(bowler, 13, set =>
        {
            Assert.Equal(PlanKind.UsualMovement, set.Plan!.Kind);
            var last = set.Targets[1];
            return
            [
                ("laydown bias", set.LaydownOffBoards, -0.6),
                ("angle bias", set.AngleOffDegrees, 0.2),
                ("usual movement", last.BentBoards, 2.5),
                ("speed", last.Explanations.AsEnumerable().Single(found => found.Explains == "beyond" && found.By.Count == 2).By[0].BoardsAUnit, -0.9),
                ("revs", last.Explanations.AsEnumerable().Single(found => found.Explains == "beyond" && found.By.Count == 2).By[1].BoardsAUnit, 0.015),
            ];
        });

        Assert.All(held, pair => Assert.True(pair.Value >= Least, $"{pair.Key}: {pair.Value} of {Sets}"));
        Assert.All(held, pair => Assert.True(pair.Value < 0.985 * Sets, $"{pair.Key}: {pair.Value} of {Sets}"));
    }

    private static Dictionary<string, int> Held(ModelBowler bowler, ulong seed, Func<SplitSet, (string Cause, BoundedEstimate Found, double Truth)[]> causes)
    {
        var chance = new Chance(seed);
        var held = new Dictionary<string, int>();
        for (var set = 0; set < Sets; set++)
        {
            var accumulator = new SplitSetAccumulator(Settings);
            for (var i = 1; i <= ShotsASet; i++)
            {
                accumulator.Add(bowler.Throw(chance, i, Near, Far, Settings.Lane));
            }

            foreach (var (cause, found, truth) in causes(accumulator.Result()))
            {
                held[cause] = held.GetValueOrDefault(cause) + (found.Low <= truth && truth <= found.High ? 1 : 0);
            }
        }

        return held;
    }

    private static double Square(double value) => value * value;
}
