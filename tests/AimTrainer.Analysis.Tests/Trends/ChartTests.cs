namespace AimTrainer.Analysis.Tests;

public sealed class ChartTests
{
    [Fact]
    public void Ewma_Handbook_AgreesToItsDigits()
    {
        // Source: ewma.nist: NIST/SEMATECH e-Handbook 6.3.2.4; the handbook rounds √(.3/1.7) to .4201, hence its limits 52.5884 and
        // 47.4115. Full precision: SciPy 1.10.1 / NumPy 1.24.2.
        double[] y = [52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
        double[] published = [50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99];
        double[] full =
        [
            50.6, 49.52, 50.564, 50.184799999999996, 50.15935999999999, 49.21155199999999, 49.74808639999999, 49.853660479999995,
            50.25756233599999, 50.33029363519999, 50.111205544639986, 49.35784388124799, 49.52049071687359, 50.05434350181151,
            49.37804045126805, 49.92462831588763, 50.72723982112134, 51.22906787478493, 51.94034751234945, 51.988243258644616,
        ];
        var chart = EwmaChart.Of(y, 50, 2.0539);
        Assert.Equal(20, chart.Averages.Count);
        Assert.All(chart.Averages.Zip(published), pair => Assert.Equal(pair.Second, pair.First, 0.006));
        Assert.All(chart.Averages.Zip(full), pair => Assert.Equal(pair.Second, pair.First, 1e-12));
        Assert.Equal(47.411568261873384, chart.Low, 1e-12);
        Assert.Equal(52.588431738126616, chart.High, 1e-12);
        Assert.Empty(chart.Signals);
        Assert.False(chart.IsOutside);
    }

    [Fact]
    public void Cusum_Handbook_AgreesToItsDigits()
    {
        // Source: cusum.nist: NIST/SEMATECH e-Handbook 6.3.2.3 (page recalled; all 40 cells of its table reproduce to 0.01).
        double[] y =
        [
            324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15, 328.325, 327.25, 327.825,
            328.5, 326.675, 327.775, 326.875, 328.35,
        ];
        double[] above = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.0, 19.04];
        double[] below = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0];
        var chart = CusumChart.Of(y, 325, 0.3175, 4.1959);
        Assert.All(chart.Above.Zip(above), pair => Assert.Equal(pair.Second, pair.First, 0.011));
        Assert.All(chart.Below.Zip(below), pair => Assert.Equal(pair.Second, pair.First, 0.011));
        Assert.Equal(14, chart.FirstSignal + 1);
    }

    [Fact]
    public void Cusum_Textbook_SignalsNothing()
    {
        // Source: Montgomery & Runger, Table 16-7, by way of reference statistics.md section 4.4: with K = 1, H = 10 no signal.
        double[] y = [102, 94.8, 98.3, 98.4, 102, 98.5, 99, 97.7, 100, 98.1, 101.3, 98.7, 101.1, 98.4, 97, 96.7, 100.3, 101.4, 97.2, 101];
        var chart = CusumChart.Of(y, 99, 1, 10);
        Assert.Null(chart.FirstSignal);
        Assert.False(chart.IsOutside);
    }

    [Fact]
    public void AfterBaseline_ShortOrLevelBaseline_IsUnknown()
    {
        Assert.Null(EwmaChart.AfterBaseline(Series.Of([.. Series.TwentyFour.Take(20)])));
        Assert.Null(EwmaChart.AfterBaseline(Series.Of([.. Enumerable.Repeat(2.0, 24)])));
        Assert.Null(CusumChart.AfterBaseline([]));
    }

    [Fact]
    public void AfterBaseline_FallByTwoSpreads_IsPrompted()
    {
        var noise = new Normal(3);
        var series = Series.Of([.. Enumerable.Range(0, 40).Select(i => (i < 20 ? 0 : -2) + noise.Next())]);
        var (ewma, cusum) = (EwmaChart.AfterBaseline(series)!, CusumChart.AfterBaseline(series)!);
        Assert.Equal((20, 20), (ewma.Averages.Count, cusum.Below.Count));
        Assert.NotEmpty(ewma.Signals);
        Assert.NotNull(cusum.FirstSignal);
        Assert.True(ewma.IsOutside && cusum.IsOutside);
    }

    [Theory]
    [InlineData(0, 1, 3)]
    [InlineData(1, 1, 3)]
    [InlineData(0.3, -1, 3)]
    [InlineData(0.3, 1, 0)]
    public void Ewma_ImpossibleSetting_Throws(double weight, double spread, double reach) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EwmaChart.Of([1], 0, spread, weight, reach));
}
