namespace AimTrainer.Domain.Tests;

public class StandardNormalTests
{
    // Source: reference statistics-checks.json, sf.normal (SciPy 1.10.1), tolerance 1e-12.
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.8413447460685429)]
    [InlineData(-1, 0.15865525393145707)]
    [InlineData(1.15, 0.8749280643628496)]
    [InlineData(1.96, 0.9750021048517795)]
    [InlineData(2.5758293035489004, 0.995)]
    public void Cdf_PublishedValues_Match(double x, double expected) => Assert.Equal(expected, StandardNormal.Cdf(x), 1e-12);

    // Source: reference statistics-checks.json, sf.normal (SciPy 1.10.1), tolerance 1e-12.
    [Theory]
    [InlineData(0.5, 0.0)]
    [InlineData(0.75, 0.6744897501960817)]
    [InlineData(0.8413447460685429, 1.0)]
    [InlineData(0.875, 1.1503493803760079)]
    [InlineData(0.9, 1.2815515655446004)]
    [InlineData(0.925, 1.4395314709384563)]
    [InlineData(0.95, 1.6448536269514722)]
    [InlineData(0.975, 1.959963984540054)]
    [InlineData(0.98, 2.0537489106318225)]
    [InlineData(0.995, 2.5758293035489004)]
    public void Quantile_PublishedValues_Match(double p, double expected) => Assert.Equal(expected, StandardNormal.Quantile(p), 1e-12);

    // Source: 0.5 * math.erfc(-x / sqrt(2)) of CPython 3 (the C library's erfc), in every range of the approximation and the tails.
    [Theory]
    [InlineData(-37, 5.725571222525139e-300)]
    [InlineData(-20, 2.7536241186063314e-89)]
    [InlineData(-8.5, 9.479534822203355e-18)]
    [InlineData(-5.7, 5.990371401063533e-09)]
    [InlineData(-5.6, 1.0717590258310968e-08)]
    [InlineData(-3, 0.0013498980316300957)]
    [InlineData(-2.2, 0.01390344751349861)]
    [InlineData(-0.67, 0.25142889509531013)]
    [InlineData(-0.66, 0.25462691467133614)]
    [InlineData(-0.3, 0.3820885778110474)]
    [InlineData(0.3, 0.6179114221889526)]
    [InlineData(0.67, 0.7485711049046899)]
    [InlineData(3, 0.9986501019683699)]
    [InlineData(6, 0.9999999990134123)]
    public void Cdf_Tails_MatchToRelativeDigits(double x, double expected) => Assert.Equal(1, StandardNormal.Cdf(x) / expected, 2e-14);

    // Source: statistics.NormalDist().inv_cdf of CPython 3.
    [Theory]
    [InlineData(1e-300, -37.0470962993612)]
    [InlineData(1e-100, -21.27345356096532)]
    [InlineData(1e-15, -7.941345326170995)]
    [InlineData(1e-10, -6.361340902404056)]
    [InlineData(1e-06, -4.753424308822899)]
    [InlineData(0.001, -3.090232306167813)]
    [InlineData(0.07, -1.4757910281791702)]
    [InlineData(0.0751, -1.4388253927525398)]
    [InlineData(0.3, -0.5244005127080407)]
    [InlineData(0.9251, 1.4402382675279632)]
    [InlineData(0.999, 3.090232306167813)]
    public void Quantile_Tails_MatchToRelativeDigits(double p, double expected) => Assert.Equal(1, StandardNormal.Quantile(p) / expected, 1e-14);

    [Fact]
    public void Quantile_Ends_AreInfinite()
    {
        Assert.Equal(double.NegativeInfinity, StandardNormal.Quantile(0));
        Assert.Equal(double.PositiveInfinity, StandardNormal.Quantile(1));
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void Quantile_NotAProbability_Throws(double p) => Assert.Throws<ArgumentOutOfRangeException>(() => StandardNormal.Quantile(p));
}
