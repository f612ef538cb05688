namespace AimTrainer.Analysis.Tests;

/// <summary>The parts of a comparison against published examples and other programs.</summary>
public sealed class ComparisonPublishedTests
{
    // Source: Student 1908, as R's data set sleep: extra hours of sleep with two drugs.
    private static readonly double[] _sleepA = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0];
    private static readonly double[] _sleepB = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

    [Fact]
    public void Welch_Sleep_AsInR()
    {
        var found = MeanDifference.Welch(_sleepB, _sleepA);

        // Source: R 4.2.2 t.test on sleep (statistics-checks.json, welch.sleep), tolerance 1e-9.
        Assert.Equal(-1.86081346748685, found.Difference.Value!.Value / found.StandardError!.Value, 1e-9);
        Assert.Equal(17.7764735161785, found.Freedom!.Value, 1e-9);
        Assert.Equal(0.0793941401873582, found.P!.Value, 1e-9);
        Assert.Equal(-3.36548323071171, found.Difference.Low!.Value, 1e-9);
        Assert.Equal(0.20548323071171, found.Difference.High!.Value, 1e-9);
    }

    [Fact]
    public void Paired_Sleep_AsInR()
    {
        var found = MeanDifference.Paired([.. _sleepA.Zip(_sleepB, (a, b) => a - b)]);

        // Source: R 4.2.2 t.test(paired = TRUE) on sleep (welch.sleep), tolerance 1e-9.
        Assert.Equal(-1.58, found.Difference.Value!.Value, 1e-9);
        Assert.Equal(-4.06212768338204, found.Difference.Value.Value / found.StandardError!.Value, 1e-9);
        Assert.Equal(9, found.Freedom);
        Assert.Equal(0.00283289019738427, found.P!.Value, 1e-9);
        Assert.Equal(-2.45988576327698, found.Difference.Low!.Value, 1e-9);
        Assert.Equal(-0.700114236723018, found.Difference.High!.Value, 1e-9);
    }

    [Fact]
    public void Welch_SummariesOfNist_AsPublished()
    {
        // Samples with just the published counts, means and spreads. Source: NIST/SEMATECH e-Handbook 1.3.5.3, AUTO83B; Welch's figures by
        // SciPy 1.10.1 (statistics.md section 6), digits as printed there.
        var found = MeanDifference.Welch(Sample(79, 30.48101, 6.10771), Sample(249, 20.14458, 6.41470));
        Assert.Equal(-12.946268, found.Difference.Value!.Value / found.StandardError!.Value, 5e-6);
        Assert.Equal(136.875, found.Freedom!.Value, 5e-4);
        Assert.Equal(-11.9152, found.Difference.Low!.Value, 5e-5);
        Assert.Equal(-8.7576, found.Difference.High!.Value, 5e-5);
    }

    [Fact]
    public void HodgesLehmann_Depression_AsPublished()
    {
        double[] x = [1.83, 0.5, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.3];
        double[] y = [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29];

        var found = HodgesLehmann.OfPairs([.. x.Zip(y, (a, b) => a - b)]);

        // Source: Hollander & Wolfe 1973 p. 29-30, as in R's help of wilcox.test; estimate and limits R 4.2.2 conf.int = TRUE (hl.paired).
        Assert.Equal(0.46, found.Value!.Value, 1e-9);
        Assert.Equal(0.01, found.Low!.Value, 1e-9);
        Assert.Equal(0.786, found.High!.Value, 1e-9);
    }

    [Fact]
    public void HodgesLehmann_TwoSamples_AsInR()
    {
        double[] x = [0.80, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46];
        double[] y = [1.15, 0.88, 0.90, 0.74, 1.21];

        var found = HodgesLehmann.OfTwo(y, x);

        // Source: Hollander & Wolfe 1973 via R's help of wilcox.test; estimate and limits R 4.2.2 (statistics.md section 6).
        Assert.Equal(0.305, found.Value!.Value, 1e-9);
        Assert.Equal(-0.15, found.Low!.Value, 1e-9);
        Assert.Equal(0.76, found.High!.Value, 1e-9);
    }

    [Theory]
    [InlineData(5.25 - 5.22, 0.384, 0.003970479074248549)]
    [InlineData(5.25 - 5.22, 0.3844163635297677, 0.0039345856869438525)]
    public void Equivalence_Lakens_AsPublished(double difference, double margin, double p)
    {
        // Source: Lakens, Soc. Psychol. Personal. Sci. 8 (2017) 355-362: m 5.25 and 5.22, sd 0.95 and 0.83, n 95 and 89, pooled; t(182) = -2.69,
        // p = 0.004; all digits by SciPy (tost.lakens, tost.lakens_d).
        const double Pooled = 0.8939915430924831;
        var found = Equivalence.Of(MeanDifference.From(difference, Pooled * Math.Sqrt((1.0 / 95) + (1.0 / 89)), 182), margin)!;
        Assert.Equal(p, found.P, 1e-9);
        Assert.True(found.Shown);
        Assert.Equal(-0.18803642107764856, found.Low, 1e-9);
        Assert.Equal(0.24803642107764906, found.High, 1e-9);
    }

    [Fact]
    public void Equivalence_DataOfAPackage_AsInR()
    {
        // Source: R package equivalence, by way of statsmodels' tests (statistics.md section 6): margin 0.6.
        double[] a = [2.84, 2.51, 2.41, 2.95, 3.14, 3.79, 4.14, 3.85, 3.02, 3.45, 5.37, 3.81, 4.19, 3.16, 3.84];
        double[] b = [2.6, 2.82, 2.18, 3.46, 4.01, 3.04, 3.47, 4.06, 2.91, 3.59, 4.51, 3.16, 3.86, 3.31, 3.02];
        var welch = Equivalence.Of(MeanDifference.Welch(b, a), 0.6)!;
        Assert.Equal(0.0485308398, welch.P, 5e-11);
        Assert.Equal(-0.266686, welch.Low, 5e-7);
        Assert.Equal(0.596020, welch.High, 5e-7);
        var paired = Equivalence.Of(MeanDifference.Paired([.. a.Zip(b, (x, y) => x - y)]), 0.6)!;
        Assert.Equal(0.0031668815, paired.P, 5e-11);
        Assert.Equal(-0.074434, paired.Low, 5e-7);
        Assert.Equal(0.403767, paired.High, 5e-7);
    }

    [Fact]
    public void Equivalence_DifferenceBeyondTheMargin_IsNotShown() => Assert.False(Equivalence.Of(MeanDifference.From(0.7, 0.05, 30), 0.5)!.Shown);

    [Fact]
    public void SpreadTest_Sleep_AsInSciPy()
    {
        var found = SpreadTest.Of(_sleepB, _sleepA)!;

        // Source: SciPy 1.10.1 levene(center='median') and R 4.2.2 var.test on sleep (var.sleep).
        Assert.Equal(0.2482049608355091, found.F, 1e-9);
        Assert.Equal(0.6243742854148879, found.P, 1e-9);
        Assert.Equal(Math.Sqrt(0.798342617998392), found.Ratio!.Value, 1e-9);
    }

    [Fact]
    public void LeastSquares_Heating_AdjustsAsInR()
    {
        var (gas, after, temperature) = Heating();

        // Source: R 4.2.2 lm(Gas ~ Insul + Temp) on MASS's whiteside (Venables & Ripley, MASS ch. 6; ancova.whiteside), tolerance 1e-8.
        var fit = LeastSquares.Fit(gas, [after, temperature], out _)!;
        Assert.Equal(-1.565204633102908, fit.Coefficients[0], 1e-8);
        Assert.Equal(0.097053378371677, fit.Error(0), 1e-8);
        Assert.Equal(-0.336696954627339, fit.Coefficients[1], 1e-8);
        Assert.Equal(0.0177631135363819, fit.Error(1), 1e-8);
        Assert.Equal(53, fit.Freedom);
        Assert.Equal(0.357411618794995, fit.Deviation, 1e-8);
        var adjusted = MeanDifference.From(fit.Coefficients[0], fit.Error(0), fit.Freedom);
        Assert.Equal(-1.759869058103969, adjusted.Difference.Low!.Value, 1e-8);
        Assert.Equal(-1.370540208101847, adjusted.Difference.High!.Value, 1e-8);

        var plain = LeastSquares.Fit(gas, [after], out _)!;
        Assert.Equal(-1.26666666666667, plain.Coefficients[0], 1e-8);
        Assert.Equal(0.264617004198611, plain.Error(0), 1e-8);

        var wider = LeastSquares.Fit(gas, [after, temperature, [.. after.Zip(temperature, (a, t) => a * t)]], out _)!;
        Assert.Equal(0.115303870459233, wider.Coefficients[2], 1e-8);
        Assert.Equal(0.0321121248404122, wider.Error(2), 1e-8);
        var ratio = (fit.ResidualSquares - wider.ResidualSquares) / (wider.ResidualSquares / wider.Freedom);
        Assert.Equal(12.89287, ratio, 5e-6);
        Assert.Equal(0.00073068518626099, Tails.AboveFisher(ratio, 1, wider.Freedom), 1e-10);
    }

    [Fact]
    public void LeastSquares_ColumnThatTellsTheSameTwice_IsNamed()
    {
        double[] y = [1, 2, 4, 3, 6, 5];
        double[] x = [1, 2, 3, 4, 5, 6];
        Assert.Null(LeastSquares.Fit(y, [x, [2, 4, 6, 8, 10, 12]], out var dependent));
        Assert.Equal(1, dependent);
        Assert.Null(LeastSquares.Fit(y, [[7, 7, 7, 7, 7, 7], x], out dependent));
        Assert.Equal(0, dependent);
    }

    [Fact]
    public void LeastSquares_TwoGroups_UnequalScatterIsWelchsError()
    {
        // By hand: HC2 of a difference of two means is Welch's standard error exactly.
        double[] values = [.. _sleepA, .. _sleepB, 9];
        double[] group = [.. _sleepA.Select(_ => 0.0), .. _sleepB.Select(_ => 1.0), 1];
        var fit = LeastSquares.Fit(values, [group], out _)!;
        Assert.Equal(MeanDifference.Welch(_sleepA, [.. _sleepB, 9]).StandardError!.Value, fit.FirstErrorOfUnequal, 1e-12);
    }

    [Fact]
    public void LeastSquares_Outlier_IsTheOneThatLeavingOutExplains()
    {
        var (gas, after, temperature) = Heating();
        gas[20] += 3;

        var (row, p) = LeastSquares.Fit(gas, [after, temperature], out _)!.Outlier();

        // Externally studentised is the t of a column that is 1 in that row only.
        var alone = new double[gas.Length];
        alone[20] = 1;
        var with = LeastSquares.Fit(gas, [alone, after, temperature], out _)!;
        Assert.Equal(20, row);
        Assert.Equal(gas.Length * Tails.TwoSided(with.Coefficients[0] / with.Error(0), with.Freedom), p, 1e-12);
    }

    [Fact]
    public void Holm_FourTests_AsInR()
    {
        // Source: from memory of R's p.adjust(c(0.01, 0.02, 0.03, 0.04), "holm"), and by hand: 4, 3, 2 and 1 times, never falling.
        var found = Holm.Adjusted([0.04, 0.01, 0.03, 0.02]);
        Assert.Equal([0.06, 0.04, 0.06, 0.06], found.Select(p => Math.Round(p, 12)));
    }

    private static double[] Sample(int count, double mean, double deviation)
    {
        double[] raw = [.. Enumerable.Range(0, count).Select(i => (double)i)];
        var (middle, spread) = (raw.Average(), Math.Sqrt(MeanDifference.Variance(raw)));
        return [.. raw.Select(value => mean + ((value - middle) / spread * deviation))];
    }

    // Source: MASS data set whiteside (temperature:gas), statistics.md section 6.
    private static (double[] Gas, double[] After, double[] Temperature) Heating()
    {
        const string Before = "-0.8:7.2 -0.7:6.9 0.4:6.4 2.5:6.0 2.9:5.8 3.2:5.8 3.6:5.6 3.9:4.7 4.2:5.8 4.3:5.2 5.4:4.9 6.0:4.9 6.0:4.3 6.0:4.4 "
            + "6.2:4.5 6.3:4.6 6.9:3.7 7.0:3.9 7.4:4.2 7.5:4.0 7.5:3.9 7.6:3.5 8.0:4.0 8.5:3.6 9.1:3.1 10.2:2.6";
        const string After = "-0.7:4.8 0.8:4.6 1.0:4.7 1.4:4.0 1.5:4.2 1.6:4.2 2.3:4.1 2.5:4.0 2.5:3.5 3.1:3.2 3.9:3.9 4.0:3.5 4.0:3.7 4.2:3.5 "
            + "4.3:3.5 4.6:3.7 4.7:3.5 4.9:3.4 4.9:3.7 4.9:4.0 5.0:3.6 5.3:3.7 6.2:2.8 7.1:3.0 7.2:2.8 7.5:2.6 8.0:2.7 8.7:2.8 8.8:1.3 9.7:1.5";
        var rows = Before.Split(' ').Select(row => (row, 0.0)).Concat(After.Split(' ').Select(row => (row, 1.0)))
            .Select(one => (Parts: one.row.Split(':'), After: one.Item2)).ToList();
        return ([.. rows.Select(row => Number(row.Parts[1]))], [.. rows.Select(row => row.After)], [.. rows.Select(row => Number(row.Parts[0]))]);

        static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
    }
}
