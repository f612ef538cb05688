using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class StraightTrendTests
{
    // Source: ols.norris: NIST StRD Norris, itl.nist.gov/div898/strd/lls/data/Norris.shtml.
    private static readonly double[] NorrisX =
    [
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9, 338, 447.5, 11.6, 556, 228.1,
        995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
    ];

    private static readonly double[] NorrisY =
    [
        0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3,
        998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
    ];

    [Fact]
    public void Of_Norris_ReachesTheCertifiedDigits()
    {
        // Certified values of NIST StRD. Reached: 11 digits or more, slope and R² 13 or more.
        var line = StraightTrend.Of(NorrisX, NorrisY)!;
        Digits.AtLeast(13, 1.00211681802045, line.Slope);
        Digits.AtLeast(11, -0.262323073774029, line.Intercept);
        Digits.AtLeast(11, 0.429796848199937E-03, line.SlopeError);
        Digits.AtLeast(11, 0.232818234301152, line.InterceptError);
        Digits.AtLeast(11, 26.6173985294224, line.ResidualSquares);
        Digits.AtLeast(11, 0.884796396144373, line.ResidualSpread);
        Digits.AtLeast(13, 0.999993745883712, line.RSquared);
        Assert.Equal(36, line.Count);
    }

    [Theory]
    // Source: reference statistics.md section 4.2: R 4.2.2 predict.lm(interval = "prediction"), 95 %, printed to six decimals.
    [InlineData(0, -0.262323, -2.121654, 1.597007)]
    [InlineData(500, 500.796086, 498.971794, 502.620378)]
    [InlineData(1000, 1001.854495, 999.962292, 1003.746698)]
    public void NextAt_Norris_AgreesWithAnotherProgram(double x, double fitted, double low, double high)
    {
        var line = StraightTrend.Of(NorrisX, NorrisY)!;
        var limits = line.NextAt(x)!.Value;
        Assert.Equal(fitted, line.At(x), 5.1e-7);
        Assert.Equal(low, limits.Low, 5.1e-7);
        Assert.Equal(high, limits.High, 5.1e-7);
    }

    [Fact]
    public void Of_LearningSeries_AgreesWithAnotherProgram()
    {
        // Source: learn.session24, "linear": computed with SciPy 1.10.1 / NumPy 1.24.2.
        var line = StraightTrend.Of(Series.Of(Series.TwentyFour))!;
        Digits.AtLeast(12, -0.05446521739130434, line.Slope);
        Digits.AtLeast(12, 2.7478985507246376, line.Intercept);
        Digits.AtLeast(12, 0.0045910505055192655, line.SlopeError);
        Digits.AtLeast(12, 0.1556900974881286, line.ResidualSpread);
        Assert.Equal(4.952089090678721e-11, line.P!.Value, 1e-13);
        var next = line.NextAt(25)!.Value;
        Digits.AtLeast(12, 1.3862681159420291, line.At(25));
        Digits.AtLeast(11, 1.035895382147521, next.Low);
        Digits.AtLeast(11, 1.7366408497365373, next.High);
    }

    [Fact]
    public void Of_LogarithmsOfBoth_AgreesWithAnotherProgram()
    {
        // Source: learn.session24, "loglog": computed with SciPy 1.10.1 / NumPy 1.24.2.
        var logs = Series.TwentyFour.Select((value, i) => new TrendPoint(Math.Log(i + 1), Math.Log(value))).ToArray();
        var line = StraightTrend.Of(logs)!;
        Digits.AtLeast(12, -0.22220557435419716, line.Slope);
        Digits.AtLeast(12, 1.2158266883888391, line.Intercept);
    }

    [Fact]
    public void Of_FewPoints_KnowsOnlyWhatTheyTell()
    {
        Assert.Null(StraightTrend.Of([]));
        Assert.Null(StraightTrend.Of(Series.Of([2])));
        var two = StraightTrend.Of(Series.Of([2, 3]))!;
        Assert.Equal((1.0, (double?)null, (double?)null, (TrendLimits?)null), (two.Slope, two.SlopeError, two.ResidualSpread, two.LineAt(1)));
        var equal = StraightTrend.Of(Series.Of([2, 2, 2]))!;
        Assert.Equal((0.0, (double?)null, (double?)null), (equal.Slope, equal.RSquared, equal.P));
    }

    [Fact]
    public void LineAt_SimulatedLines_HoldsTheTruthAsOftenAsItSays()
    {
        // 2000 lines of nine points, normal noise: 95 % limits of the line at the last one hold it in 95 %, within four standard errors.
        var held = Enumerable.Range(0, 2000).Count(sample =>
        {
            var noise = new Normal((ulong)sample);
            var limits = StraightTrend.Of([.. Enumerable.Range(1, 9).Select(i => new TrendPoint(i, 3 - (0.1 * i) + (0.2 * noise.Next())))])!.LineAt(9)!.Value;
            return limits.Low <= 2.1 && limits.High >= 2.1;
        });
        Assert.InRange(held / 2000.0, 0.95 - (4 * Math.Sqrt(0.95 * 0.05 / 2000)), 0.95 + (4 * Math.Sqrt(0.95 * 0.05 / 2000)));
    }

    [Fact]
    public void Of_AnyLine_IsFoundAgain() =>
        Gen.Select(Gen.Double[-5, 5], Gen.Double[-5, 5], Gen.Int[3, 50]).Sample((slope, intercept, count) =>
        {
            var line = StraightTrend.Of([.. Enumerable.Range(1, count).Select(i => new TrendPoint(i, intercept + (slope * i)))])!;
            Assert.Equal(slope, line.Slope, 1e-10);
            Assert.Equal(intercept, line.Intercept, 1e-9);
        });
}
