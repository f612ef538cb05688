using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class EstimateLimitsTests
{
    [Theory]
    // Source: sf.chi2: SciPy 1.10.1, tolerance 1e-10. The quantile is what the limits of a spread of 1 are made of; largest difference measured: 7.1e-14.
    [InlineData(9, 2.7003894999803584, 19.02276779864163, 0.95)]
    [InlineData(19, 10.117013063859044, 30.14352720564616, 0.9)]
    public void OfSpread_Unit_IsMadeOfTheQuantilesOfAnotherProgram(int freedom, double low, double high, double confidence)
    {
        var limits = EstimateLimits.OfSpread(1, freedom + 1, confidence);
        Assert.Equal(high, freedom / (limits.Low!.Value * limits.Low.Value), 1e-10);
        Assert.Equal(low, freedom / (limits.High!.Value * limits.High.Value), 1e-10);
    }

    [Theory]
    // Source: sf.chi2: SciPy 1.10.1: the lower quantile at one and the upper at 99 degrees of freedom, tolerance 1e-10.
    [InlineData(1, 0.0009820691171752555, false)]
    [InlineData(99, 128.4219886438403, true)]
    public void OfSpread_FewAndMany_IsMadeOfTheQuantilesOfAnotherProgram(int freedom, double quantile, bool upper)
    {
        var limits = EstimateLimits.OfSpread(1, freedom + 1);
        var limit = (upper ? limits.Low : limits.High)!.Value;
        Assert.Equal(quantile, freedom / (limit * limit), 1e-10);
    }

    [Fact]
    public void OfMeanAndOfSpread_TenShots_AgreeWithAnotherProgram()
    {
        // Source: statistics.md section 1, ten shots (SciPy 1.10.1), four digits: mean 0.4, s 0.983192; [-0.3033, 1.1033] and [0.6763, 1.7949].
        var mean = EstimateLimits.OfMean(0.4, 0.9831920802501752, 10);
        Assert.Equal(-0.3033, mean.Low!.Value, 5e-5);
        Assert.Equal(1.1033, mean.High!.Value, 5e-5);
        var spread = EstimateLimits.OfSpread(0.9831920802501752, 10);
        Assert.Equal(0.6763, spread.Low!.Value, 5e-5);
        Assert.Equal(1.7949, spread.High!.Value, 5e-5);
    }

    [Fact]
    public void OfMeanAndOfSpread_TooFew_SayFromHowManyOn()
    {
        Assert.Equal(BoundedEstimate.Unknown("no measured shot; known from 1 on"), EstimateLimits.OfMean(0, 0, 0));
        Assert.Equal(BoundedEstimate.Bare(1.5, EstimateLimits.OneShot), EstimateLimits.OfMean(1.5, 0, 1));
        Assert.Contains("from 2 on", EstimateLimits.OfSpread(0, 0).Why, StringComparison.Ordinal);
        Assert.Contains("from 2 on", EstimateLimits.OfSpread(0, 1).Why, StringComparison.Ordinal);
        Assert.Equal(BoundedEstimate.Bare(0, EstimateLimits.NoScatter), EstimateLimits.OfSpread(0, 9));
    }

    [Fact]
    public void Without_MoreNoiseThanSpread_IsZeroAndSaysSo()
    {
        var left = EstimateLimits.Without(EstimateLimits.OfSpread(0.1, 10), 0.04);
        Assert.Equal(0, left.Value);
        Assert.Equal(0, left.Low);
        Assert.Contains("below measurement noise", left.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_KnownNoise_TakesItOutOfTheSquares() =>
        Gen.Select(Gen.Double[0.5, 3], Gen.Double[0, 0.4]).Sample((spread, noise) =>
        {
            var left = EstimateLimits.Without(EstimateLimits.OfSpread(spread, 20), noise * noise);
            Assert.Equal(spread * spread, (left.Value!.Value * left.Value.Value) + (noise * noise), 1e-12);
            Assert.True(left.Low <= left.Value && left.Value <= left.High);
        });

    [Fact]
    public void OfSpread_AnyNumber_HoldsTheSpreadAndNarrows() =>
        Gen.Int[2, 100_000].Sample(count =>
        {
            var limits = EstimateLimits.OfSpread(1, count);
            var more = EstimateLimits.OfSpread(1, count + 50);
            Assert.True(limits.Low < 1 && limits.High > 1 && limits.Low > 0);
            Assert.True(more.High - more.Low < limits.High - limits.Low);
        });

    [Fact]
    public void Times_NegativeFactor_TurnsTheLimits()
    {
        var turned = BoundedEstimate.Between(1, -2, 3).Times(-2);
        Assert.Equal(BoundedEstimate.Between(-2, -6, 4), turned);
    }

    [Theory]
    [InlineData(-1, 0.95)]
    [InlineData(3, 0)]
    [InlineData(3, 1)]
    public void OfMean_OutsideTheLimits_Throws(int count, double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EstimateLimits.OfMean(0, 1, count, confidence));
}
