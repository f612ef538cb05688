using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

public sealed class SpreadComparisonTests
{
    private static readonly double[] A = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0];
    private static readonly double[] B = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

    [Fact]
    public void Of_SleepData_AgreesWithR()
    {
        // Source: welch.sleep: R 4.2.2 t.test(sleep): [-3.36548323071171, 0.20548323071171]; var.sleep: var.test: ratio of variances
        // [0.198297013510539, 3.21412271636986]. Tolerance 1e-9 (largest difference measured: 1.1e-14).
        var comparison = SpreadComparison.Of("b", Measures(B), "a", Measures(A));
        Assert.Equal(-1.58, comparison.BiasChangeBoards.Value!.Value, 1e-9);
        Assert.Equal(-3.36548323071171, comparison.BiasChangeBoards.Low!.Value, 1e-9);
        Assert.Equal(0.20548323071171, comparison.BiasChangeBoards.High!.Value, 1e-9);
        Assert.Equal(0.798342617998392, Math.Pow(comparison.SpreadRatio.Value!.Value, 2), 1e-9);
        Assert.Equal(0.198297013510539, Math.Pow(comparison.SpreadRatio.Low!.Value, 2), 1e-9);
        Assert.Equal(3.21412271636986, Math.Pow(comparison.SpreadRatio.High!.Value, 2), 1e-9);
    }

    [Fact]
    public void Of_TooFew_SaysFromWhen()
    {
        var comparison = SpreadComparison.Of("b", Measures(B[..7]), "a", Measures(A));
        Assert.Equal("7 early and 10 late shots measured; known from 8 on either side", comparison.SpreadRatio.Why);
        Assert.Null(comparison.BiasChangeBoards.Value);
    }

    [Fact]
    public void Of_NoScatter_HasNoRatio()
    {
        var same = Measures([1, 1, 1, 1, 1, 1, 1, 1]);
        Assert.Equal(EstimateLimits.NoScatter, SpreadComparison.Of("x", same, "a", Measures(A)).SpreadRatio.Why);
    }

    private static ErrorMeasures Measures(double[] misses) => ErrorMeasures.Of(misses.Select(BoardOffset.FromBoards));
}
