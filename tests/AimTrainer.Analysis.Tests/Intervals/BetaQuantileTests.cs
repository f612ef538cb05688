using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class BetaQuantileTests
{
    [Theory]
    // Source: sf.beta: SciPy 1.10.1, tolerance 1e-10 (largest difference measured: 3.3e-16).
    [InlineData(0.025, 4.5, 16.5, 0.07152005247873086)]
    [InlineData(0.975, 4.5, 16.5, 0.4082257625169254)]
    [InlineData(0.025, 4, 17, 0.05733399705003277)]
    [InlineData(0.975, 5, 16, 0.4366140029966683)]
    [InlineData(0.025, 0.5, 20.5, 2.4246478459242733e-05)]
    public void Of_Computed_AgreesWithAnotherProgram(double p, double a, double b, double expected) =>
        Assert.Equal(expected, BetaQuantile.Of(p, a, b), 1e-10);

    [Fact]
    public void Of_AnyShapes_IsTheInverse() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[0.5, 400], Gen.Double[0.5, 400]).Sample((p, a, b) =>
            Assert.Equal(p, Domain.SpecialFunctions.RegularisedBeta(a, b, BetaQuantile.Of(p, a, b)), 1e-9));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Of_NoProbability_Throws(double p) => Assert.Throws<ArgumentOutOfRangeException>(() => BetaQuantile.Of(p, 1, 1));
}
