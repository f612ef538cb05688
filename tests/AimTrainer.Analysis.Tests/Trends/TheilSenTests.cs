using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class TheilSenTests
{
    [Fact]
    public void Of_Sen1968_AgreesToItsDigits()
    {
        // Source: sen.1968: Sen 1968, JASA 63:1379-1389, worked example: slope 4, 93 % limits 3.71 and 4.38, intercept 4.
        var line = TheilSen.Of(Series.Of([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]), 0.93)!;
        Assert.Equal((4.0, 4.0), (line.Slope, line.Intercept));
        Assert.Equal(3.71, line.LowAtRank!.Value, 0.005);
        Assert.Equal(4.38, line.HighAtRank!.Value, 0.005);
        Assert.InRange(line.Low!.Value, 3.71, 4);
        Assert.InRange(line.High!.Value, 4, 4.38);
        Assert.Equal(1, line.Side);
    }

    [Fact]
    public void Of_HolyCross_AgreesWithAnotherProgram()
    {
        // Source: sen.holycross: SciPy 1.10.1 theilslopes for slope and intercept, limits interpolated as Gilbert 1987 does; limits at
        // whole ranks from reference statistics.md section 4.1, SciPy, four digits.
        var line = TheilSen.Of(Series.Of(Series.HolyCross, first: 0))!;
        Digits.AtLeast(14, 0.566666666666667, line.Slope);
        Digits.AtLeast(14, 11.966666666666663, line.Intercept);
        Digits.AtLeast(12, 0.32312979729596764, line.Low);
        Digits.AtLeast(12, 0.8697836711733875, line.High);
        Assert.Equal(0.3250, line.LowAtRank!.Value, 5e-5);
        Assert.Equal(0.8667, line.HighAtRank!.Value, 5e-5);
    }

    [Fact]
    public void Of_LearningSeries_AgreesWithAnotherProgram()
    {
        // Source: learn.session24, "sen": computed with SciPy 1.10.1 / NumPy 1.24.2.
        var line = TheilSen.Of(Series.Of(Series.TwentyFour))!;
        Digits.AtLeast(13, -0.049999999999999975, line.Slope);
        Digits.AtLeast(13, 2.5649999999999995, line.Intercept);
        Digits.AtLeast(12, -0.06215268700517296, line.Low);
        Digits.AtLeast(12, -0.038543236347161586, line.High);
        Assert.Equal(-1, line.Side);
        Assert.Equal(2.5649999999999995 - 0.5, line.At(10), 1e-12);
    }

    [Fact]
    public void Of_Ties_AgreesWithAnotherProgram()
    {
        // Source: reference statistics.md section 4.1, "Ties": Sen 1.0 [0.5, 1.25], SciPy 1.10.1, whose limits are at whole ranks.
        var line = TheilSen.Of(Series.Of([72, 70, 75, 75, 74, 78, 75, 80, 79, 80, 83, 80]))!;
        Assert.Equal(1.0, line.Slope);
        Assert.Equal((0.5, 1.25), (line.LowAtRank, line.HighAtRank));
    }

    [Fact]
    public void Of_Nile_AgreesWithAnotherProgram() =>
        // Source: reference statistics.md section 4.6: R datasets::Nile, Sen slope -2.6 a year.
        Assert.Equal(-2.6, TheilSen.Of(Series.Of(Nile.Flow, first: 1871))!.Slope, 0.05);

    [Fact]
    public void Of_FewerThanTwo_IsUnknown()
    {
        Assert.Null(TheilSen.Of([]));
        Assert.Null(TheilSen.Of(Series.Of([3])));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Of_TwoOrThree_HasASlopeAndNoLimits(int count)
    {
        var line = TheilSen.Of(Series.Of([.. Enumerable.Range(0, count).Select(i => 3.0 - i)]))!;
        Assert.Equal((-1.0, (double?)null, (double?)null, 0), (line.Slope, line.Low, line.High, line.Side));
    }

    [Fact]
    public void Of_AllEqual_ClaimsNoLimits()
    {
        var line = TheilSen.Of(Series.Of([.. Enumerable.Repeat(1.5, 9)]))!;
        Assert.Equal((0.0, 1.5, (double?)null, 0), (line.Slope, line.Intercept, line.Low, line.Side));
    }

    [Fact]
    public void Of_AnySeries_HoldsItsSlopeAndTurnsWithTheValues() =>
        Gen.Double[-3, 3].Array[5, 40].Sample(values =>
        {
            var (line, turned) = (TheilSen.Of(Series.Of(values))!, TheilSen.Of(Series.Of([.. values.Select(value => -value)]))!);
            Assert.Equal(-line.Slope, turned.Slope, 1e-12);
            if (line is { Low: { } low, High: { } high })
            {
                Assert.InRange(line.Slope, low, high);
                Assert.Equal((-high, -low), (turned.Low!.Value, turned.High!.Value), Near);
            }
        });

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Of_ImpossibleConfidence_Throws(double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TheilSen.Of(Series.Of([1, 2, 3]), confidence));

    [Fact]
    public void Of_TooMany_Throws() => Assert.Throws<ArgumentException>(() => TheilSen.Of(Series.Of(new double[TheilSen.MostPoints + 1])));

    private static bool Near((double, double) a, (double, double) b) => Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9;
}
