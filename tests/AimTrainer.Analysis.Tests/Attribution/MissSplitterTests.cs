using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class MissSplitterTests
{
    private static readonly LaneProfile Lane = LaneProfileReader.Default;

    [Fact]
    public void Split_TenThousandRandomShots_PartsAddUpToTheMiss()
    {
        var chance = new Chance(2026);
        var (split, worst) = (0, 0.0);
        for (var i = 0; i < 10_000; i++)
        {
            var kind = i % 3;
            (double Board, double Feet)[] targets = kind switch
            {
                0 => [(chance.Uniform(1, 39), 15), (chance.Uniform(1, 39), 42)],
                1 => [(chance.Uniform(1, 39), 10), (chance.Uniform(1, 39), 33.5), (chance.Uniform(1, 39), 45)],
                _ => [(chance.Uniform(1, 39), chance.Uniform(12, 60))],
            };
            var shot = MadeShots.Shot(
                chance.Unit() < 0.8 ? chance.Uniform(0.5, 39.5) : null,
                [(8.5, chance.Uniform(0.5, 39.5)), .. targets.Select(target => (target.Feet, chance.Uniform(-4, 44)))]).At(1, targets);
            // Random readings are no line: whether they are taken for one is not the matter here.
            var line = new StraightLine(chance.Uniform(0, 40), chance.Uniform(-1, 1), 0, StraightSource.LaydownAndCrossings, []);
            var plan = kind == 2
                ? LinePlan.Single(shot.Targets[0], chance.Uniform(-0.5, 0.5), chance.Uniform(-3, 3), Lane)
                : i % 2 == 0 ? LinePlan.Straight(shot.Targets, Lane) : LinePlan.Usual(shot.Targets, chance.Uniform(-1, 1), chance.Uniform(-5, 5), Lane);
            foreach (var target in MissSplitter.Split(shot, new StraightFit(line, null, null), plan, Lane).Targets)
            {
                var parts = target.LaydownBoards!.Value + target.AngleBoards!.Value + target.BeyondBoards!.Value;
                worst = Math.Max(worst, Math.Abs(parts - target.MissBoards!.Value));
                Assert.Equal(target.MissBoards.Value, parts, 1e-9);
                split++;
            }
        }

        Assert.True(split > 10_000);
        Assert.True(worst < 1e-11, $"reached {worst}");
    }

    [Fact]
    public void Split_HandExample_IsWhatAHandFinds()
    {
        // By hand: the line 15@15 to 9@45 runs straight from 18 at the foul line, 0.2 boards a foot outward. The ball is laid down at 18.5 and
        // crosses the arrows at 16.1: 0.16 a foot. Straight on it would be at 18.5 - 7.2 = 11.3 at 45 ft, and is seen at 12: miss 3 inside.
        var shot = MadeShots.Shot(18.5, [(15, 16.1), (45, 12)]).At(1, (15, 15), (9, 45));
        var fit = StraightFit.Of(shot.Shot, Lane);
        var plan = LinePlan.Straight(shot.Targets, Lane);
        var split = MissSplitter.Split(shot, fit, plan, Lane);

        Assert.Equal(18, plan.LaydownBoard, 1e-12);
        Assert.Equal(-0.2, plan.BoardsAFoot, 1e-12);
        Assert.Equal(0.5, split.LaydownOffBoards!.Value, 1e-12);
        var last = split.Targets[1];
        Assert.Equal((3.0, 0.5), (last.MissBoards, last.LaydownBoards));
        Assert.Equal(1.8, last.AngleBoards!.Value, 1e-12);
        Assert.Equal(0.7, last.BeyondBoards!.Value, 1e-12);
        Assert.Equal(11.3, last.StraightBoard!.Value, 1e-12);
        Assert.Equal(0.7, last.BentBoards!.Value, 1e-12);
        Assert.Equal(0, split.Targets[0].BeyondBoards!.Value, 1e-12);
        // Source: trade.md check 11: one board over 15 ft is 0.33871 degrees; 0.04 boards a foot are 0.6 boards over 15 ft, so 0.2032.
        Assert.Equal(-0.2032, split.AngleOffDegrees!.Value, 5e-5);
    }

    [Theory]
    // Source: trade.md section 4d: lines by board at the arrows and at 40 ft, with laydown board and angle (there negative is outward).
    [InlineData(15, 7, 40, 19.80, 1.6254)]
    [InlineData(12, 7, 40, 15.00, 1.0160)]
    [InlineData(9, 7, 40, 10.20, 0.4065)]
    [InlineData(10, 4, 40, 13.60, 1.2192)]
    [InlineData(13, 8, 39, 16.125, 1.0584)]
    public void Plan_OfPublishedLines_HasTheirLaydownAndAngle(double arrows, double far, double feet, double laydown, double degrees)
    {
        var plan = LinePlan.Straight(MadeShots.Shot(20, []).At(1, (arrows, 15), (far, feet)).Targets, Lane);
        Assert.Equal(laydown, plan.LaydownBoard, 1e-9);
        Assert.Equal(degrees, plan.LaunchAngleDegrees, 5e-5);
    }

    [Fact]
    public void Fit_ReadingsBeyondTheStraightPart_AreNeverUsed()
    {
        // Two crossings in the hook would make a fine line; the only one in the straight part is the arrows.
        var hook = StraightFit.Of(MadeShots.Shot(null, [(15, 12), (35, 8), (45, 9)]), Lane);
        Assert.Null(hook.Line);
        Assert.Contains("a second place at least 5 ft from it, up to 20 ft", hook.Why, StringComparison.Ordinal);
        Assert.Equal("no laydown and no crossing up to 20 ft", StraightFit.Of(MadeShots.Shot(null, [(35, 8), (45, 9)]), Lane).Why);

        // And with a laydown they change nothing.
        Assert.Equal(
            StraightFit.Of(MadeShots.Shot(16, [(15, 12)]), Lane).Line,
            StraightFit.Of(MadeShots.Shot(16, [(15, 12), (20.001, 3), (45, 9)]), Lane).Line);
    }

    [Fact]
    public void Fit_AnyShot_ItsReadingsLieInTheStraightPart() =>
        Gen.Select(Gen.Double[5, 40], Gen.Double[0, 60].Array[0, 6], Gen.Bool).Sample((straight, feet, laydown) =>
        {
            var lane = Lane with { StraightDistance = Feet.FromMeasurement(straight) };
            var shot = MadeShots.Shot(laydown ? 20 : null, feet.Select(d => Math.Round(d, 2)).Distinct().Select(d => (d, 20.0)));
            if (StraightFit.Of(shot, lane).Line is { } line)
            {
                Assert.All(line.Readings, reading => Assert.True(reading.Distance <= lane.StraightDistance));
                Assert.True(line.Readings[^1].Distance.Value - line.Readings[0].Distance.Value >= LaunchAngles.ShortestBaseFeet);
            }
        });

    [Fact]
    public void Fit_BendInTheStraightPart_IsNoLine()
    {
        // Straight from 16 to 12 over 15 ft; at 10 ft that is 13.33, seen at 12.7: 0.63 off.
        var bent = StraightFit.Of(MadeShots.Shot(16, [(10, 12.7), (15, 12)]), Lane);
        Assert.Null(bent.Line);
        Assert.Contains("bends by 0.63 boards", bent.Why, StringComparison.Ordinal);
        Assert.NotNull(StraightFit.Of(MadeShots.Shot(16, [(10, 13), (15, 12)]), Lane).Line);
        // A noisy sensor may see that much.
        Assert.NotNull(StraightFit.Of(MadeShots.Shot(16, [(10, 12.7), (15, 12)]), Lane, 0.2).Line);
    }

    [Fact]
    public void Fit_ThreeReadings_IsLeastSquares()
    {
        // By hand: (0, 16), (10, 13), (20, 10.6): mean 10, 13.2; slope -54 / 200 = -0.27; laydown 15.9.
        var line = StraightFit.Of(MadeShots.Shot(16, [(10, 13), (20, 10.6)]), Lane).Line!;
        Assert.Equal(-0.27, line.BoardsAFoot, 1e-12);
        Assert.Equal(15.9, line.LaydownBoard, 1e-12);
        Assert.Equal(StraightSource.LaydownAndCrossings, line.From);
    }

    [Fact]
    public void Fit_OnePlaceAndAReportedAngle_IsALine()
    {
        var line = StraightFit.Of(MadeShots.Shot(16, [(42, 8)], angle: 1), Lane).Line!;
        Assert.Equal((16.0, 1.0, StraightSource.PlaceAndReportedAngle), (line.LaydownBoard, line.LaunchAngleDegrees, line.From));
        // Source: trade.md check 11: 1 degree = 2.9526 boards at 15 ft.
        Assert.Equal(16 - 2.9526, line.BoardAt(Feet.FromFeet(15)), 5e-5);
        Assert.Null(ReadingNoise.Of(line, MadeShots.Shot(16, [(42, 8)]).At(1, (8, 42)).Targets[0]));
    }

    [Fact]
    public void Split_CrossingWorkedOutInTheHook_IsRefused()
    {
        // The grader takes the line between 35 and 45 ft for the crossing at 40; a hook between them is no cause.
        var shot = MadeShots.Shot(16, [(15, 12), (35, 8), (45, 9)]).At(1, (12, 15), (8, 40));
        var split = MissSplitter.Split(shot, StraightFit.Of(shot.Shot, Lane), LinePlan.Straight(shot.Targets, Lane), Lane);
        Assert.Equal(MissSplitter.WorkedOut, split.Targets[1].Why);
        Assert.Equal(0.5, split.Targets[1].MissBoards!.Value, 1e-12);
        Assert.Null(split.Targets[1].BentBoards);
        Assert.Null(split.Targets[0].Why);
    }

    [Fact]
    public void Split_CrossingWorkedOutAcrossTheEndOfTheStraightPart_IsRefused()
    {
        // Board 18 ft is told from 15 and 25 ft, and 25 ft lies in the hook; from 15 and 20 ft it would be good.
        var across = MadeShots.Shot(16, [(15, 12), (25, 10)]).At(1, (12, 15), (11, 18));
        Assert.Equal(MissSplitter.WorkedOut, Split(across).Targets[1].Why);
        var before = MadeShots.Shot(16, [(15, 12), (20, 10.7)]).At(1, (12, 15), (11, 18));
        Assert.NotNull(Split(before).Targets[1].BentBoards);

        static ShotSplit Split(ObservedShot shot) => MissSplitter.Split(shot, StraightFit.Of(shot.Shot, Lane), LinePlan.Straight(shot.Targets, Lane), Lane);
    }

    [Fact]
    public void Split_NothingMeasuredAtATarget_SaysSoThere()
    {
        var shot = MadeShots.Shot(16, [(15, 12)]).At(1, (12, 15), (8, 42));
        var split = MissSplitter.Split(shot, StraightFit.Of(shot.Shot, Lane), LinePlan.Straight(shot.Targets, Lane), Lane);
        Assert.Equal(MissSplitter.NotMeasured, split.Targets[1].Why);
        Assert.NotNull(split.Targets[1].StraightBoard);
        Assert.NotNull(split.LaydownOffBoards);
    }

    [Fact]
    public void Split_NoPlan_SaysWhatIsNeeded()
    {
        var shot = MadeShots.Shot(16, [(15, 12)]).At(1, (12, 15));
        Assert.Equal(MissSplitter.NoPlan, MissSplitter.Split(shot, StraightFit.Of(shot.Shot, Lane), null, Lane).Why);
    }

    [Fact]
    public void Plan_OneTarget_Throws() =>
        Assert.Throws<ArgumentException>(() => LinePlan.Straight(MadeShots.Shot(16, []).At(1, (12, 15)).Targets, Lane));
}
