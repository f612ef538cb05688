using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class TargetAccuracyTests
{
    private static readonly double?[] TenShots = [10.4, 9.2, 11.1, 10.8, 9.7, 12, 10.1, 8.9, 11.5, 10.3];

    [Fact]
    public void Result_HandExample_IsWhatAHandFinds()
    {
        // Source: err1d.hand: errors -1, 1, 2, 0, 3; CE = 1, VE = sqrt(2), with n - 1 1.5811388300841898, AE = 7/5, E = sqrt(3); tolerance 1e-9
        // (measured: no difference). Schmidt & Lee, Motor Control and Learning, ch. 2.
        var target = MadeShots.AtTheArrows(10, 9, 11, 12, 10, 13);
        Assert.Equal(5, target.Measured);
        Assert.Equal(1, target.ConstantErrorBoards.Value!.Value, 1e-9);
        Assert.Equal(1, target.AbsoluteConstantErrorBoards!.Value, 1e-9);
        Assert.Equal(1.4142135623730951, target.VariableErrorBoards.Value!.Value, 1e-9);
        Assert.Equal(1.5811388300841898, target.StandardDeviationBoards.Value!.Value, 1e-9);
        Assert.Equal(1.4, target.AbsoluteErrorBoards.Value!.Value, 1e-9);
        Assert.Equal(1.7320508075688772, target.TotalErrorBoards.Value!.Value, 1e-9);
        Assert.Equal(1 / Math.Sqrt(8), target.RelativeErrorOfSpread!.Value, 1e-12);
        Assert.Equal((3, 5), (target.HitRate.Hits, target.HitRate.Shots));
    }

    [Fact]
    public void Result_TenShots_AgreesWithAnotherProgram()
    {
        // Source: width.data (bias, sd, E; SciPy 1.10.1, tolerance 1e-7, largest difference measured 2.2e-16) and statistics.md section 1 (limits, four digits).
        var target = MadeShots.AtTheArrows(10, TenShots);
        Assert.Equal(0.4, target.ConstantErrorBoards.Value!.Value, 1e-7);
        Assert.Equal(0.9831920802501752, target.StandardDeviationBoards.Value!.Value, 1e-7);
        Assert.Equal(1.0148891565092222, target.TotalErrorBoards.Value!.Value, 1e-7);
        Assert.Equal(-0.3033, target.ConstantErrorBoards.Low!.Value, 5e-5);
        Assert.Equal(1.1033, target.ConstantErrorBoards.High!.Value, 5e-5);
        Assert.Equal(0.6763, target.StandardDeviationBoards.Low!.Value, 5e-5);
        Assert.Equal(1.7949, target.StandardDeviationBoards.High!.Value, 5e-5);
        Assert.Equal(0.6763 * Math.Sqrt(0.9), target.VariableErrorBoards.Low!.Value, 5e-5);
        Assert.Equal(3.1, target.TenShotSpread.LatestBoards);
        Assert.Equal(1, target.TenShotSpread.Tens);
    }

    [Fact]
    public void Result_EffectiveWidth_IsThatOfTheSources()
    {
        // Source: fitts.lane: spread 1 board at 15 ft: width 4.133 boards, 4.3979358974358975 in, 5.38985212028194 bits, tolerance 1e-9 (measured:
        // no difference).
        // fitts.4133: sqrt(2 pi e) = 4.132731354122493, tolerance 1e-6: the constant is that number rounded.
        var width = EffectiveWidth.Of(BoundedEstimate.Between(1, 0.5, 2), Feet.FromFeet(15), LaneProfileReader.Default);
        Assert.Equal(4.133, width.Boards.Value!.Value, 1e-9);
        Assert.Equal(4.3979358974358975, width.Inches.Value!.Value, 1e-9);
        Assert.Equal(5.38985212028194, width.DifficultyBits.Value!.Value, 1e-9);
        Assert.True(width.DifficultyBits.Low < width.DifficultyBits.Value && width.DifficultyBits.Value < width.DifficultyBits.High);
        Assert.Equal(EffectiveWidth.Deviations, Math.Sqrt(2 * Math.PI * Math.E), 5e-4);
    }

    [Fact]
    public void Result_EffectiveWidth_HasTheBitsOfTheStandard()
    {
        // Source: fitts.tp: ISO 9241-411, Soukoreff & MacKenzie 2004: distance 512, spread 18: width 74.394, 2.978612166470725 bits; 1e-9. The
        // same units along and across: 512 inches are 512/12 ft, 18 inches are so many boards.
        var lane = LaneProfileReader.Default;
        var width = EffectiveWidth.Of(BoundedEstimate.Between(18 / lane.BoardWidth.Value, 1, 100), Feet.FromFeet(512.0 / 12), lane);
        Assert.Equal(74.394, width.Inches.Value!.Value, 1e-9);
        Assert.Equal(2.978612166470725, width.DifficultyBits.Value!.Value, 1e-9);
    }

    [Fact]
    public void Result_NoShot_KnowsNothingAndSaysFromWhen()
    {
        var target = MadeShots.AtTheArrows(10);
        Assert.Equal((0, 0, 0), (target.Shots, target.Measured, target.HitRate.Shots));
        Assert.Null(target.ConstantErrorBoards.Value);
        Assert.Null(target.HitRate.Rate);
        Assert.All(
            [
                target.ConstantErrorBoards.Why, target.VariableErrorBoards.Why, target.StandardDeviationBoards.Why, target.AbsoluteErrorBoards.Why,
                target.TotalErrorBoards.Why, target.HitRate.Why, target.TenShotSpread.Why, target.Robust.Why, target.EffectiveWidth.Boards.Why,
            ],
            why => Assert.Contains(" on", why, StringComparison.Ordinal));
    }

    [Fact]
    public void Result_AllMissing_AreShotsAndNothingElse()
    {
        var target = MadeShots.AtTheArrows(10, null, null, null);
        Assert.Equal((3, 0), (target.Shots, target.Measured));
        Assert.Equal(MadeShots.AtTheArrows(10) with { Shots = 3 }, target);
    }

    [Fact]
    public void Result_OneShot_HasNoScatterAndNoLimits()
    {
        var target = MadeShots.AtTheArrows(10, 11.25);
        Assert.Equal(BoundedEstimate.Bare(1.25, EstimateLimits.OneShot), target.ConstantErrorBoards);
        Assert.Equal(BoundedEstimate.Bare(1.25, EstimateLimits.OneShot), target.TotalErrorBoards);
        Assert.Null(target.VariableErrorBoards.Value);
        Assert.Equal(1, target.HitRate.Rate);
        Assert.Null(target.RelativeErrorOfSpread);
    }

    [Fact]
    public void Result_TwoAndThreeShots_HaveWideLimits()
    {
        var two = MadeShots.AtTheArrows(10, 10, 11);
        var three = MadeShots.AtTheArrows(10, 10, 11, 10.5);
        // By hand: mean 0.5, s = sqrt(0.5), t(1) = 12.7062: 0.5 ± 6.3531.
        Assert.Equal(0.5 - 6.353102368216048, two.ConstantErrorBoards.Low!.Value, 1e-9);
        Assert.True(two.ConstantErrorBoards.High - two.ConstantErrorBoards.Low > three.ConstantErrorBoards.High - three.ConstantErrorBoards.Low);
        Assert.Null(three.Corrected.StepBoards);
        Assert.Null(three.Robust.GrossMisses);
    }

    [Fact]
    public void Result_NineShots_TellGrossMissesButNoTen()
    {
        var target = MadeShots.AtTheArrows(10, TenShots[..9]);
        Assert.Equal(0, target.Robust.GrossMisses);
        Assert.Equal("9 measured; known from 10 on", target.TenShotSpread.Why);
        Assert.NotNull(target.Corrected.StepBoards);
    }

    [Fact]
    public void Result_AllIdentical_ClaimsNoCertainty()
    {
        var target = MadeShots.AtTheArrows(10, 11, 11, 11, 11, 11, 11, 11, 11, 11, 11);
        Assert.Equal(BoundedEstimate.Bare(1, EstimateLimits.NoScatter), target.ConstantErrorBoards);
        Assert.Equal(BoundedEstimate.Bare(0, EstimateLimits.NoScatter), target.StandardDeviationBoards);
        Assert.Equal(BoundedEstimate.Bare(0, EstimateLimits.NoScatter), target.VariableErrorBoards);
        Assert.Equal(0, target.Robust.GrossMisses);
        Assert.Null(target.EffectiveWidth.DifficultyBits.Value);
        Assert.Equal(0, target.Corrected.SpreadBoards.Value);
        Assert.Contains("below measurement noise", target.Corrected.SpreadBoards.Why, StringComparison.Ordinal);
        Assert.Equal(0, target.TenShotSpread.LatestBoards);
    }

    [Fact]
    public void Result_LeftHander_IsTheMirrorOnTheLaneAndTheSameInBoards()
    {
        // Boards count from the ball-hand edge: where a left-hander's ball crosses, seen from the right edge, is 40 less the board.
        var lane = LaneProfileReader.Default;
        var fromRight = TenShots.Select(board => 40 - board!.Value).ToArray();
        var seen = fromRight.Select(board => lane.BoardOf(lane.PointOf(Board.FromBoards(board), Feet.FromFeet(15), Hand.Right), Hand.Left).Boards);
        Assert.Equal(MadeShots.AtTheArrows(10, TenShots), MadeShots.AtTheArrows(10, [.. seen.Select(board => (double?)board)]));
    }

    [Theory]
    // By hand: the coarsest of the steps of which this reading and 11, 12, 10, 13 are multiples.
    [InlineData(1, 9)]
    [InlineData(0.5, 9.5)]
    [InlineData(0.25, 9.25)]
    [InlineData(0.2, 9.2)]
    [InlineData(0.1, 9.1)]
    [InlineData(0.01, 9.01)]
    [InlineData(1, -4)]
    public void Result_Readings_TellTheirStep(double step, double board) =>
        Assert.Equal(step, MadeShots.AtTheArrows(10, board, 11, 12, 10, 13).Corrected.StepBoards);

    [Fact]
    public void Result_WholeBoardsAndNoise_AreTakenOutOfTheSpread()
    {
        // By hand: s² = 2.5, Sheppard 1/12, noise 0.3² = 0.09.
        var noisy = MadeShots.AtTheArrows(MadeShots.Settings with { NoiseBoards = 0.3 }, 10, 9, 11, 12, 10, 13);
        Assert.Equal(Math.Sqrt(2.5 - (1.0 / 12) - 0.09), noisy.Corrected.SpreadBoards.Value!.Value, 1e-12);
        Assert.Null(noisy.Corrected.Why);
        var unknown = MadeShots.AtTheArrows(10, 9, 11, 12, 10, 13);
        Assert.Equal(Math.Sqrt(2.5 - (1.0 / 12)), unknown.Corrected.SpreadBoards.Value!.Value, 1e-12);
        Assert.Equal("the sensor's noise is not known", unknown.Corrected.Why);
    }

    [Fact]
    public void Result_WholeBoardsOfManyBowlers_ComeRightOnAverage()
    {
        // Source: sim.robust_tracking, rounded to whole boards, sd 1.5, n = 100: the width is 2.1 % too wide, with Sheppard's correction 0.3 %;
        // tolerance 0.01 (differences measured with this seed: 0.0057 and 0.0058). The width of a target is proportional to the spread.
        var chance = new Chance(7);
        var (plain, corrected) = (0.0, 0.0);
        const int Sets = 1_500;
        for (var set = 0; set < Sets; set++)
        {
            var bias = chance.Uniform(-0.5, 0.5);
            var target = MadeShots.AtTheArrows(20, [.. Enumerable.Range(0, 100).Select(_ => (double?)Math.Round(20 + bias + (1.5 * chance.Normal())))]);
            Assert.Equal(1, target.Corrected.StepBoards);
            plain += ((target.StandardDeviationBoards.Value!.Value / 1.5) - 1) / Sets;
            corrected += ((target.Corrected.SpreadBoards.Value!.Value / 1.5) - 1) / Sets;
        }

        Assert.Equal(0.02114805102250821, plain, 0.01);
        Assert.Equal(0.002752029756169518, corrected, 0.01);
    }

    [Fact]
    public void Result_LimitsOfManySets_HoldTheTruth()
    {
        // 95 % limits of bias and spread (exact) and of total and absolute error (approximate), 2,000 sets of 12 shots of a known bowler.
        const double Bias = 0.8;
        const double Spread = 1.4;
        var total = Math.Sqrt((Bias * Bias) + (Spread * Spread));
        // Mean of a folded normal. Source: Leone, Nelson & Nottingham 1961, Technometrics 3, from memory.
        var absolute = (Spread * Math.Sqrt(2 / Math.PI) * Math.Exp(-Bias * Bias / (2 * Spread * Spread))) + (Bias * (1 - (2 * StandardNormal.Cdf(-Bias / Spread))));
        var chance = new Chance(19);
        var held = new int[5];
        const int Sets = 2_000;
        for (var set = 0; set < Sets; set++)
        {
            var target = MadeShots.AtTheArrows(15, [.. Enumerable.Range(0, 12).Select(_ => (double?)(15 + Bias + (Spread * chance.Normal())))]);
            held[0] += Holds(target.ConstantErrorBoards, Bias);
            held[1] += Holds(target.StandardDeviationBoards, Spread);
            held[2] += Holds(target.TotalErrorBoards, total);
            held[3] += Holds(target.AbsoluteErrorBoards, absolute);
            held[4] += Holds(target.Robust.SpreadBoards, Spread);
        }

        Assert.InRange(held[0], 0.935 * Sets, 0.965 * Sets);
        Assert.InRange(held[1], 0.935 * Sets, 0.965 * Sets);
        Assert.InRange(held[2], 0.93 * Sets, 0.975 * Sets);
        Assert.InRange(held[3], 0.92 * Sets, 0.97 * Sets);
        Assert.InRange(held[4], 0.90 * Sets, 0.98 * Sets);
    }

    [Theory]
    // Source: trade.md section 5 and its check 15: US Bowler July 2012; 1.5 in are 1.4096 boards of a 41.5 in lane.
    [InlineData(1.40, "elite: under 1.5 inches")]
    [InlineData(1.41, "averages of 220 and more: 2 boards")]
    [InlineData(2, "averages of 220 and more: 2 boards")]
    [InlineData(3, "averages of 200 and more: 3 boards")]
    [InlineData(4, "averages of 180 and more: 4 boards")]
    [InlineData(4.5, "averages of 160 and more: 4.5 boards")]
    [InlineData(4.51, null)]
    public void Band_OfASpreadAtTheArrows_IsThePublishedOne(double spread, string? words) =>
        Assert.Equal(words, PublishedSpreadBand.Of(spread, Feet.FromFeet(15), LaneProfileReader.Default)?.Words);

    [Fact]
    public void Band_Downlane_SaysNothing() => Assert.Null(PublishedSpreadBand.Of(1, Feet.FromFeet(42), LaneProfileReader.Default));

    [Fact]
    public void TenShotSpread_ThreeTens_AreEachTheirOwn()
    {
        double?[] tight = [10, 10.5, 11, 10, 10, 10, 10, 10, 10, null, 10];
        var target = MadeShots.AtTheArrows(10, [.. tight, .. TenShots, .. tight, 30]);
        Assert.Equal(3, target.TenShotSpread.Tens);
        Assert.Equal(1, target.TenShotSpread.LatestBoards);
        Assert.Equal(1.0641, target.TenShotSpread.LatestInches!.Value, 5e-5);
        Assert.Equal((1 + 3.1 + 1) / 3, target.TenShotSpread.MeanBoards!.Value, 1e-12);
        Assert.Equal((1.0, 3.1), (target.TenShotSpread.SmallestBoards, target.TenShotSpread.LargestBoards));
        Assert.Equal("elite: under 1.5 inches", target.TenShotSpread.Reference!.Words);
        Assert.Equal(PublishedSpreadBand.Caveats, target.TenShotSpread.Caveats);
    }

    [Fact]
    public void Result_TargetThatMoves_IsNoSpreadAndAtSeveralDistancesNoBand()
    {
        var accumulator = new TargetAccuracyAccumulator("walks", MadeShots.Settings);
        for (var i = 0; i < 10; i++)
        {
            accumulator.Add(ObservedTarget.At("walks", MadeShots.Shot(null, [(15, 10.5 + i)]), Board.FromBoards(10 + i), Feet.FromFeet(15), null));
        }

        Assert.Equal(0, accumulator.Result.TenShotSpread.LatestBoards);
        Assert.NotNull(accumulator.Result.TenShotSpread.Reference);
        accumulator.Add(ObservedTarget.At("walks", MadeShots.Shot(null, [(42, 8)]), Board.FromBoards(10), Feet.FromFeet(42), null));
        Assert.Null(accumulator.Result.TenShotSpread.Reference);
        Assert.Equal("the shots were not thrown at one distance", accumulator.Result.EffectiveWidth.DifficultyBits.Why);
        Assert.NotNull(accumulator.Result.EffectiveWidth.Boards.Value);
    }

    [Fact]
    public void Result_AnyShots_KeepsItsIdentities() =>
        Gen.Int[-400, 4400].Array[2, 80].Sample(hundredths =>
        {
            var target = MadeShots.AtTheArrows(12.5, [.. hundredths.Select(h => (double?)(h / 100.0))]);
            var (ce, ve, e) = (target.ConstantErrorBoards.Value!.Value, target.VariableErrorBoards.Value!.Value, target.TotalErrorBoards.Value!.Value);
            Assert.Equal(e * e, (ce * ce) + (ve * ve), 1e-9);
            Assert.True(target.AbsoluteErrorBoards.Value <= e + 1e-12);
            Assert.True(target.AbsoluteConstantErrorBoards <= target.AbsoluteErrorBoards.Value + 1e-12);
            Assert.True(target.ConstantErrorBoards.Low is null || (target.ConstantErrorBoards.Low < ce && ce < target.ConstantErrorBoards.High));
            Assert.True(target.HitRate.WilsonLow <= target.HitRate.Rate && target.HitRate.Rate <= target.HitRate.WilsonHigh);
            Assert.True(target.HitRate.JeffreysLow <= target.HitRate.Rate && target.HitRate.Rate <= target.HitRate.JeffreysHigh);
        });

    [Fact]
    public void Result_TargetWithoutAWidth_CannotBeHeld()
    {
        var accumulator = new TargetAccuracyAccumulator("place", MadeShots.Settings);
        accumulator.Add(ObservedTarget.At("place", MadeShots.Shot(null, [(15, 10)]), Board.FromBoards(10), Feet.FromFeet(15), null));
        Assert.Equal("the target has no width, so it cannot be held", accumulator.Result.HitRate.Why);
        Assert.Equal(0, accumulator.Result.ConstantErrorBoards.Value);
    }

    [Fact]
    public void Add_MillionShots_KeepsFewBytes()
    {
        var accumulator = new TargetAccuracyAccumulator("arrows", MadeShots.Settings);
        var targets = Enumerable.Range(-400, 4801).Select(h =>
            ObservedTarget.At("arrows", MadeShots.Shot(null, [(15, h / 100.0)]), Board.FromBoards(10), Feet.FromFeet(15), null)).ToArray();
        foreach (var target in targets)
        {
            accumulator.Add(target);
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1_000_000; i++)
        {
            accumulator.Add(targets[i % targets.Length]);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.Equal(1_000_000 + targets.Length, accumulator.Result.Measured);
    }

    [Fact]
    public void Settings_NegativeNoise_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => MadeShots.Settings with { NoiseBoards = -0.1 });

    private static int Holds(BoundedEstimate estimate, double truth) => estimate.Low <= truth && truth <= estimate.High ? 1 : 0;
}
