using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class LearningCurvesTests
{
    [Fact]
    public void Of_LearningSeries_AgreesWithAnotherProgram()
    {
        // Source: learn.session24: computed with SciPy 1.10.1 / NumPy 1.24.2; the exponential equals R 4.2.2 nls to its digits. The
        // power curve with three parameters there runs to b < 0; held at an asymptote of 0 it is that with two. Tolerance 1e-6.
        var curves = LearningCurves.Of(Series.Of(Series.TwentyFour), canBeNegative: false);
        Assert.Equal(CurveName.Exponential, curves.Named);

        var exponential = curves.Exponential!;
        Assert.Equal(1.5869530430063012, exponential.Asymptote, 1e-8);
        Assert.Equal(1.4755695852820514, exponential.Gain, 1e-8);
        Assert.Equal(0.1306645253939963, exponential.Rate, 1e-8);
        Assert.Equal(0.0259885713718195, exponential.AsymptoteError!.Value, 1e-7);
        Assert.Equal(0.027762245555382172, exponential.GainError!.Value, 1e-7);
        Assert.Equal(0.0072661605180827345, exponential.RateError!.Value, 1e-7);
        Assert.Equal(0.027501097722577608, exponential.ResidualSquares, 1e-10);
        Assert.Equal(0.03618806546401044, exponential.ResidualSpread!.Value, 1e-9);
        Assert.Equal(-86.40894692464579, exponential.Criteria.Akaike, 1e-6);
        Assert.Equal(-81.69673160325401, exponential.Criteria.Bayes, 1e-6);
        Assert.Equal(Math.Log(2) / 0.1306645253939963, curves.SessionsToHalve!.Value, 1e-6);

        Assert.Equal(1.5869530430063012 + 1.4755695852820514, curves.BendAt(1)!.Value, 1e-8);
        Assert.Equal(1.5869530430063012 + (1.4755695852820514 * Math.Exp(-23 * 0.1306645253939963)), curves.BendAt(24)!.Value, 1e-8);

        var power = curves.Power!;
        Assert.True(power.AsymptoteHeld);
        Assert.Equal(3.29342696686873, power.Gain, 1e-7);
        Assert.Equal(0.21068660544094253, power.Rate, 1e-8);
        Assert.Equal(0.05539308485636337, power.GainError!.Value, 1e-6);
        Assert.Equal(0.007739665874268571, power.RateError!.Value, 1e-7);
        Assert.Equal(0.13102071420712325, power.ResidualSquares, 1e-9);
        Assert.Equal(-50.94183860403181, power.Criteria.Akaike, 1e-6);
        Assert.Equal(-47.40767711298797, power.Criteria.Bayes, 1e-6);
    }

    [Fact]
    public void Of_ExactPower_NamesThePower()
    {
        var curves = LearningCurves.Of(Series.Of([.. Enumerable.Range(1, 30).Select(n => 1 + (2 * Math.Pow(n, -0.8)))]), canBeNegative: false);
        Assert.Equal(CurveName.Power, curves.Named);
        Assert.Equal((1.0, 2.0, 0.8), (curves.Power!.Asymptote, curves.Power.Gain, curves.Power.Rate), Near);
        Assert.Null(curves.SessionsToHalve);
    }

    [Fact]
    public void Of_AnyExponential_IsFoundAgain() =>
        Gen.Select(Gen.Double[0.5, 3], Gen.Double[0.5, 3], Gen.Double[0.08, 0.8], Gen.Int[14, 40]).Sample((a, b, r, count) =>
        {
            var curves = LearningCurves.Of(Series.Of([.. Enumerable.Range(1, count).Select(n => a + (b * Math.Exp(-r * (n - 1))))]), canBeNegative: false);
            Assert.Equal((a, b, r), (curves.Exponential!.Asymptote, curves.Exponential.Gain, curves.Exponential.Rate), Near);
        });

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(11)]
    public void Of_FewerThanTwelve_RefusesToName(int count)
    {
        var curves = LearningCurves.Of(Series.Of([.. Series.TwentyFour.Take(count)]), canBeNegative: false);
        Assert.Equal(new LearningCurves(count, null, CurveName.TooFew, null, null, null, null, null), curves);
    }

    [Fact]
    public void Of_NoChange_SeesALevel()
    {
        Assert.Equal(CurveName.Level, LearningCurves.Of(Series.Of([.. Enumerable.Repeat(1.5, 20)]), canBeNegative: false).Named);

        // A curve where there is none: named in few of 200 series of pure noise.
        var named = Enumerable.Range(0, 200).Count(sample =>
        {
            var noise = new Normal((ulong)sample + 77);
            return LearningCurves.Of(Series.Of([.. Enumerable.Range(0, 24).Select(_ => 2 + (0.3 * noise.Next()))]), canBeNegative: false).Named != CurveName.Level;
        });
        Assert.InRange(named, 0, 10);
    }

    [Fact]
    public void Of_StraightFall_DoesNotClaimABend()
    {
        var noise = new Normal(5);
        var line = Series.Of([.. Enumerable.Range(0, 24).Select(i => 3 - (0.05 * i) + (0.1 * noise.Next()))]);
        Assert.Equal(CurveName.StraightLine, LearningCurves.Of(line, canBeNegative: false).Named);
    }

    [Fact]
    public void Of_NoisyCurve_CannotTellWhich()
    {
        var noise = new Normal(11);
        var curve = Series.Of([.. Enumerable.Range(1, 24).Select(n => 1 + (3 * Math.Exp(-0.5 * n)) + (0.12 * noise.Next()))]);
        Assert.Equal(CurveName.CannotTell, LearningCurves.Of(curve, canBeNegative: false).Named);
    }

    [Fact]
    public void Of_ValuesBelowZero_MayHaveAnAsymptoteBelowZero()
    {
        var curves = LearningCurves.Of(Series.Of([.. Enumerable.Range(1, 20).Select(n => -1 + (2 * Math.Exp(-0.3 * (n - 1))))]), canBeNegative: true);
        Assert.Equal((-1.0, 2.0, 0.3), (curves.Exponential!.Asymptote, curves.Exponential.Gain, curves.Exponential.Rate), Near);
    }

    private static bool Near((double, double, double) a, (double, double, double) b) =>
        Math.Abs(a.Item1 - b.Item1) < 1e-6 && Math.Abs(a.Item2 - b.Item2) < 1e-6 && Math.Abs(a.Item3 - b.Item3) < 1e-6;
}
