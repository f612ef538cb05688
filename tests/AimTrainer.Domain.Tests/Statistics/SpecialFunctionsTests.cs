namespace AimTrainer.Domain.Tests;

public class SpecialFunctionsTests
{
    // Source: math.lgamma of CPython 3 (the C library's lgamma).
    [Theory]
    [InlineData(1e-10, 23.025850929882736)]
    [InlineData(0.1, 2.2527126517342055)]
    [InlineData(0.5, 0.5723649429247004)]
    [InlineData(1, 0.0)]
    [InlineData(1.5, -0.12078223763524543)]
    [InlineData(2, 0.0)]
    [InlineData(2.5, 0.2846828704729196)]
    [InlineData(5, 3.178053830347945)]
    [InlineData(9.99, 12.779315214350197)]
    [InlineData(10, 12.801827480081467)]
    [InlineData(27, 61.26170176100201)]
    [InlineData(100.5, 361.4355404677776)]
    [InlineData(10000.0, 82099.71749644238)]
    [InlineData(100000000.0, 1742068066.1038349)]
    public void LogGamma_KnownValues_Match(double x, double expected) =>
        Assert.Equal(expected, SpecialFunctions.LogGamma(x), 1e-14 * Math.Max(1, Math.Abs(expected)) * 2);

    // Source: NIST Digital Library of Mathematical Functions 5.15.2 and 5.15.5: π²/2 at 1/2, π²/6 at 1, one step on less 1/x².
    [Theory]
    [InlineData(0.5, 4.934802200544679)]
    [InlineData(1, 1.6449340668482264)]
    [InlineData(2, 0.6449340668482264)]
    [InlineData(12.5, 0.08328522460157739)]
    public void Trigamma_KnownValues_Match(double x, double expected) => Assert.Equal(expected, SpecialFunctions.Trigamma(x), 1e-13);

    // Source: reference statistics-checks.json, sf.beta (quantiles by SciPy 1.10.1): the share below each must be the one asked for.
    [Theory]
    [InlineData(0.025, 4.5, 16.5, 0.07152005247873086)]
    [InlineData(0.975, 4.5, 16.5, 0.4082257625169254)]
    [InlineData(0.025, 4, 17, 0.05733399705003277)]
    [InlineData(0.975, 5, 16, 0.4366140029966683)]
    [InlineData(0.025, 0.5, 20.5, 2.4246478459242733e-05)]
    public void RegularisedBeta_PublishedQuantiles_GiveTheirShare(double share, double a, double b, double x) =>
        Assert.Equal(share, SpecialFunctions.RegularisedBeta(a, b, x), 1e-12);

    [Fact]
    public void RegularisedBeta_Ends_AreZeroAndOne()
    {
        Assert.Equal(0, SpecialFunctions.RegularisedBeta(2, 3, 0));
        Assert.Equal(1, SpecialFunctions.RegularisedBeta(2, 3, 1));
    }

    [Theory]
    [InlineData(0, 1, 0.5)]
    [InlineData(1, -1, 0.5)]
    [InlineData(1, 1, 1.5)]
    [InlineData(double.NaN, 1, 0.5)]
    [InlineData(1, double.PositiveInfinity, 0.5)]
    public void RegularisedBeta_OutsideItsRange_Throws(double a, double b, double x) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecialFunctions.RegularisedBeta(a, b, x));
}
