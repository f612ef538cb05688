using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class VarianceSharesTests
{
    private static readonly double[] AtNear = [14.3, 13.6, 14, 12, 15.3, 14.4, 14.2, 14.6, 14.3, 13.8, 14.2, 14.1, 14.7, 12.7];
    private static readonly double[] AtFar = [6.6, 5.5, 6.3, 3.7, 7.4, 5.9, 6.7, 6.7, 6.5, 6, 5.6, 6.6, 7.9, 3.7];

    [Fact]
    public void Of_FourteenShots_AgreesWithAnotherProgram()
    {
        // Source: attrib.14: two readings at 15 and 35 ft, sensor noise 0.1 board; SciPy 1.10.1, tolerance 1e-9 (largest difference measured: 3.5e-14).
        var (moments, noise) = Moments(AtNear, AtFar, 15, 35, 0.1);
        var raw = VarianceShares.Of(moments, 35, null)!;
        Assert.Equal(1.4248901098901106, raw.MissVariance, 1e-9);
        Assert.Equal(0.5145776098901094, raw.LaydownVariance, 1e-9);
        Assert.Equal(0.9121875000000004, raw.AngleVariance, 1e-9);
        Assert.Equal(-0.0018749999999991183, raw.TwiceLaydownAngle, 1e-9);
        Assert.Equal(0.36047699841900255, raw.LaydownShare.Value!.Value, 1e-9);
        Assert.Equal(0.6395230015809974, raw.AngleShare.Value!.Value, 1e-9);
        var aim = AimDistance.Of(moments, null);
        Assert.Equal(0.0359712230215658, aim.Feet.Value!.Value, 1e-9);
        Assert.Equal(0.7173399796297478, aim.SpreadThereBoards!.Value, 1e-9);

        var corrected = VarianceShares.Of(moments, 35, noise)!;
        Assert.Equal(1.4148901098901108, corrected.MissVariance, 1e-9);
        Assert.Equal(0.47832760989010936, corrected.LaydownVariance, 1e-9);
        Assert.Equal(0.8509375000000003, corrected.AngleVariance, 1e-9);
        Assert.Equal(0.08562500000000091, corrected.TwiceLaydownAngle, 1e-9);
        Assert.Equal(0.36832550192225516, corrected.LaydownShare.Value!.Value, 1e-9);
        Assert.Equal(0.6316744980777448, corrected.AngleShare.Value!.Value, 1e-9);
        var correctedAim = AimDistance.Of(moments, noise);
        Assert.Equal(-1.760925449871483, correctedAim.Feet.Value!.Value, 1e-9);
        Assert.Equal(0.6900533462883495, correctedAim.SpreadThereBoards!.Value, 1e-9);
    }

    [Fact]
    public void Noise_OfTwoReadings_IsThatOfTheGuide()
    {
        // Source: attrib.14, meas: JCGM 100:2008 (GUM) 5.2.2 equation 13: sd of laydown 0.19039432764659772, of slope 0.007071067811865476,
        // covariance -0.00125 for a noise of 0.1 board at 15 and 35 ft.
        var (_, noise) = Moments(AtNear, AtFar, 15, 35, 0.1);
        Assert.Equal(0.19039432764659772, Math.Sqrt(noise.Laydown), 1e-12);
        Assert.Equal(0.007071067811865476, Math.Sqrt(noise.Slope), 1e-12);
        Assert.Equal(-0.00125, noise.LaydownSlope, 1e-12);
        Assert.Equal(0, noise.Rest, 1e-12);
    }

    [Fact]
    public void Of_HandExample_IsWhatAHandFinds()
    {
        // Source: attrib.hand, tolerance 1e-9 (largest difference measured: 3.6e-15): shares -0.2 and 1.2, aim distance 15 ft, 0.816496580927726 boards there.
        var (moments, _) = Moments([9, 11, 10, 10], [9, 11, 12, 8], 15, 45, 0);
        var shares = VarianceShares.Of(moments, 45, null)!;
        Assert.Equal(3.3333333333333335, shares.MissVariance, 1e-9);
        Assert.Equal(1.3333333333333333, shares.LaydownVariance, 1e-9);
        Assert.Equal(6, shares.AngleVariance, 1e-9);
        Assert.Equal(-4, shares.TwiceLaydownAngle, 1e-9);
        Assert.Equal(-0.2, shares.LaydownShare.Value!.Value, 1e-9);
        Assert.Equal(1.2, shares.AngleShare.Value!.Value, 1e-9);
        var aim = AimDistance.Of(moments, null);
        Assert.Equal(15, aim.Feet.Value!.Value, 1e-9);
        Assert.Equal(0.816496580927726, aim.SpreadThereBoards!.Value, 1e-9);
    }

    [Fact]
    public void Of_AnyShots_SharesAndVariancesAddUp() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-0.1, 0.1], Gen.Double[-2, 2]).Array[VarianceShares.Fewest, 60].Sample(shots =>
        {
            var moments = new CoMoments(3);
            foreach (var (laydown, slope, rest) in shots)
            {
                moments.Add(laydown, slope, rest);
            }

            if (VarianceShares.Of(moments, 42, null) is not { } shares)
            {
                return;
            }

            Assert.Equal(1, (shares.LaydownShare.Value + shares.AngleShare.Value + shares.BeyondShare.Value)!.Value, 1e-9);
            Assert.Equal(
                shares.MissVariance,
                shares.LaydownVariance + shares.AngleVariance + shares.BeyondVariance + shares.TwiceLaydownAngle + shares.TwiceLaydownBeyond + shares.TwiceAngleBeyond,
                1e-9);
        });

    [Fact]
    public void Of_TooFewOrAllAlikeOrOnlyNoise_IsNothing()
    {
        var three = Moments([9, 11, 10], [9, 11, 12], 15, 45, 0).Moments;
        Assert.Null(VarianceShares.Of(three, 45, null));
        Assert.Equal("3 split shots; known from 4 on", AimDistance.Of(three, null).Feet.Why);
        var alike = Moments([9, 9, 9, 9, 9], [8, 8, 8, 8, 8], 15, 45, 0).Moments;
        Assert.Null(VarianceShares.Of(alike, 45, null));
        Assert.Null(AimDistance.Of(alike, null).Feet.Value);
        var (noisy, noise) = Moments([9, 9.1, 9, 9.05, 9], [8, 8, 8.1, 8, 8], 15, 45, 3);
        Assert.Null(VarianceShares.Of(noisy, 45, noise));
        Assert.Contains("below measurement noise", AimDistance.Of(noisy, noise).Feet.Why, StringComparison.Ordinal);
    }

    private static (CoMoments Moments, ReadingNoise Noise) Moments(double[] near, double[] far, double nearFeet, double farFeet, double noiseBoards)
    {
        // A lane on which the ball is taken to run straight that far, so that both places count.
        var lane = LaneProfileReader.Default with { StraightDistance = Feet.FromFeet(farFeet) };
        var moments = new CoMoments(3);
        ReadingNoise noise = default;
        for (var i = 0; i < near.Length; i++)
        {
            var shot = MadeShots.Shot(null, [(nearFeet, near[i]), (farFeet, far[i])]);
            var line = StraightFit.Of(shot, lane).Line!;
            var target = ObservedTarget.At("far", shot, Board.FromBoards(6), Feet.FromFeet(farFeet), null);
            moments.Add(line.LaydownBoard, line.BoardsAFoot, target.Board!.Value.Boards - line.BoardAt(target.Distance));
            noise += ReadingNoise.Of(line, target)!.Value * (noiseBoards * noiseBoards / near.Length);
        }

        return (moments, noise);
    }
}
