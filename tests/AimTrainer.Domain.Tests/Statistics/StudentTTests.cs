using CsCheck;

namespace AimTrainer.Domain.Tests;

public class StudentTTests
{
    // Source: reference statistics-checks.json, sf.t (SciPy 1.10.1), tolerance 1e-10.
    [Theory]
    [InlineData(0.975, 4, 2.7764451051977987)]
    [InlineData(0.975, 9, 2.2621571627409915)]
    [InlineData(0.975, 17.7764735161785, 2.102817241569714)]
    [InlineData(0.95, 19, 1.729132811521367)]
    [InlineData(0.875, 9, 1.2296591732857312)]
    [InlineData(0.95, 182, 1.6532690237044858)]
    public void Quantile_PublishedValues_Match(double p, double freedom, double expected)
    {
        Assert.Equal(expected, new StudentT(freedom).Quantile(p), 1e-10);
        Assert.Equal(-expected, new StudentT(freedom).Quantile(1 - p), 1e-10);
    }

    // The reference's first value, 12.706204736432095 (0.975, 1 degree of freedom), is itself off in the eleventh digit: with one
    // degree of freedom the distribution is Cauchy's and the quantile tan(π (p - 1/2)) = 12.7062047361747.
    [Fact]
    public void Quantile_OneDegreeOfFreedom_MatchesTheClosedFormAndTheReferenceAsFarAsItGoes()
    {
        var quantile = new StudentT(1).Quantile(0.975);
        Assert.Equal(Math.Tan(Math.PI * 0.475), quantile, 1e-12);
        Assert.Equal(12.706204736432095, quantile, 1e-9);
    }

    // Source: closed forms of the distribution with 1 and 2 degrees of freedom: 1/2 + atan(t)/π and 1/2 + t/(2 √(2 + t²)).
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.5)]
    [InlineData(2)]
    [InlineData(-50)]
    public void Cdf_OneAndTwoDegreesOfFreedom_MatchTheClosedForms(double t)
    {
        Assert.Equal(0.5 + (Math.Atan(t) / Math.PI), new StudentT(1).Cdf(t), 1e-14);
        Assert.Equal(0.5 + (t / 2 / Math.Sqrt(2 + (t * t))), new StudentT(2).Cdf(t), 1e-14);
    }

    // Source: reference statistics-checks.json, sf.t (SciPy 1.10.1), tolerance 1e-10.
    [Theory]
    [InlineData(1.5, 4, 0.896)]
    [InlineData(-2.0, 9.5, 0.03744317887399471)]
    [InlineData(2.69, 182, 0.9960950365066454)]
    public void Cdf_PublishedValues_Match(double t, double freedom, double expected) =>
        Assert.Equal(expected, new StudentT(freedom).Cdf(t), 1e-10);

    // The far approximation and the fraction are two ways to one value: they must agree where one takes over from the other.
    [Fact]
    public void Cdf_WhereTheSeriesTakesOver_AgreesWithTheFraction() =>
        Gen.Select(Gen.Double[200.0001, 500], Gen.Double[0, 12]).Sample((freedom, t) =>
        {
            var fraction = 0.5 + (0.5 * SpecialFunctions.RegularisedBeta(0.5, freedom / 2, t * t / (freedom + (t * t))));
            Assert.Equal(fraction, new StudentT(freedom).Cdf(t), 2e-13);
            Assert.Equal(1 - fraction, new StudentT(freedom).Cdf(-t), 2e-13);
        });

    [Fact]
    public void Quantile_ThenCdf_GivesTheProbability() =>
        Gen.Select(Gen.Double[0.5, 3000], Gen.Double[0.001, 0.999]).Sample((freedom, p) =>
        {
            var t = new StudentT(freedom);
            Assert.Equal(p, t.Cdf(t.Quantile(p)), 1e-12);
        });

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Quantile_NotStrictlyBetweenZeroAndOne_Throws(double p) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new StudentT(5).Quantile(p));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Constructor_NoFreedom_Throws(double freedom) => Assert.Throws<ArgumentOutOfRangeException>(() => new StudentT(freedom));
}
