using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class MannKendallTests
{
    [Fact]
    public void Of_PublishedByHand_AgreesToItsDigits()
    {
        // Source: mk.holycross: Little, "A Mann-Kendall Example (By Hand)", Holy Cross: S = 54, V = 332.667, Z = 2.9058;
        // z, p and tau_b of R 4.2.2 cor.test(method = "kendall", continuity = TRUE). Reached: 1e-12 and better.
        var test = MannKendall.Of(Series.Of(Series.HolyCross));
        Assert.Equal((14, 54), (test.Count, test.S));
        Digits.AtLeast(14, 332.6666666666667, test.VarianceOfS);
        Digits.AtLeast(12, 2.905836845996537, test.Z);
        Digits.AtLeast(12, 0.003662723762882436, test.PNormal);
        Digits.AtLeast(12, 0.5966941897186163, test.TauB);
        Assert.Null(test.PExact);
        Assert.Equal(test.PNormal, test.P);
    }

    [Fact]
    public void Of_Ties_AgreesWithAnotherProgram()
    {
        // Source: reference statistics.md section 4.1, "Ties": computed with SciPy 1.10.1, printed to six or seven digits.
        var test = MannKendall.Of(Series.Of([72, 70, 75, 75, 74, 78, 75, 80, 79, 80, 83, 80]));
        Assert.Equal(48, test.S);
        Assert.Equal(205.3333, test.VarianceOfS, 5e-5);
        Assert.Equal(3.279957, test.Z!.Value, 5e-7);
        Assert.Equal(0.0010382, test.P!.Value, 5e-8);
        Assert.Equal(0.7627701, test.TauB!.Value, 5e-8);
    }

    [Fact]
    public void Of_LearningSeries_AgreesWithAnotherProgram()
    {
        // Source: learn.session24, "mk": computed with SciPy 1.10.1 / NumPy 1.24.2.
        var test = MannKendall.Of(Series.Of(Series.TwentyFour));
        Assert.Equal(-259, test.S);
        Digits.AtLeast(14, 1624.3333333333333, test.VarianceOfS);
        Digits.AtLeast(12, -6.401505568858181, test.Z);
        Digits.AtLeast(11, 1.538522008732141e-10, test.P);
        Digits.AtLeast(12, -0.940110441189613, test.TauB);
    }

    [Theory]
    // Source: computed with SciPy 1.10.1, scipy.stats.kendalltau(method="exact"); no ties.
    [InlineData(new[] { 0.346, 1.222, 1.13 }, 1, 1.0)]
    [InlineData(new[] { -1.303, 1.305, 1.246, 0.663 }, 0, 1.0)]
    [InlineData(new[] { 0.581, 0.765, 1.094, 1.228, 2.147, 1.264 }, 13, 0.016666666666666666)]
    [InlineData(new[] { -0.163, -0.082, 1.399, 1.24, 1.308, 1.218, 2.143, 2.808 }, 18, 0.03115079365079365)]
    [InlineData(new[] { -0.276, 1.694, 1.807, -1.511, -0.289, 1.825, 1.978, 3.014, 3.417, 5.718 }, 33, 0.002212852733686067)]
    public void Of_UpToTen_ExactAgreesWithAnotherProgram(double[] values, int s, double p)
    {
        var test = MannKendall.Of(Series.Of(values));
        Assert.Equal(s, test.S);
        Digits.AtLeast(13, p, test.PExact);
        Assert.Equal(test.PExact, test.P);
    }

    [Fact]
    public void Of_UpToSevenWithTies_ExactIsTheShareOfAllOrders() =>
        Gen.Int[0, 3].Array[2, 7].Sample(
            values =>
            {
                var series = values.Select(value => (double)value).ToArray();
                var test = MannKendall.Of(Series.Of(series));
                if (series.Distinct().Count() == 1)
                {
                    Assert.Null(test.P);
                    return;
                }

                var all = Orders(series).Select(order => MannKendall.Of(Series.Of(order)).S).ToList();
                Assert.Equal((double)all.Count(s => Math.Abs(s) >= Math.Abs(test.S)) / all.Count, test.PExact!.Value, 1e-12);
            },
            iter: 40);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Of_TooFew_KnowsNoP(int count)
    {
        var test = MannKendall.Of(Series.Of([.. Enumerable.Repeat(2.0, count)]));
        Assert.Equal(new MannKendall(count, 0, 0, null, null, null, null), test);
    }

    [Fact]
    public void Of_AllEqual_KnowsNoP() =>
        Assert.Equal(new MannKendall(9, 0, 0, null, null, null, null), MannKendall.Of(Series.Of([.. Enumerable.Repeat(1.5, 9)])));

    [Fact]
    public void Of_Reversed_HasTheOtherSign() =>
        Gen.Double[-3, 3].Array[2, 30].Sample(values =>
        {
            var (forth, back) = (MannKendall.Of(Series.Of(values)), MannKendall.Of(Series.Of([.. values.Reverse()])));
            Assert.Equal((-forth.S, forth.P, -forth.Z), (back.S, back.P, back.Z));
        });

    [Theory]
    [InlineData(1, 2, double.NaN)]
    [InlineData(1, 1, 3)]
    [InlineData(2, 1, 3)]
    public void Of_NoSeries_Throws(double first, double second, double value) =>
        Assert.Throws<ArgumentException>(() => MannKendall.Of([new TrendPoint(first, 0), new TrendPoint(second, value)]));

    private static IEnumerable<double[]> Orders(double[] values)
    {
        if (values.Length <= 1)
        {
            return [values];
        }

        return Enumerable.Range(0, values.Length).SelectMany(i =>
            Orders([.. values.Take(i), .. values.Skip(i + 1)]).Select(rest => (double[])[values[i], .. rest]));
    }
}
