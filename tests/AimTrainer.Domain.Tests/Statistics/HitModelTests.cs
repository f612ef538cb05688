using CsCheck;

namespace AimTrainer.Domain.Tests;

public class HitModelTests
{
    // Source: reference statistics-checks.json, phit.exact (SciPy 1.10.1), tolerance 1e-12.
    [Theory]
    [InlineData(1, 0, 1.5, 0.26111731963647267)]
    [InlineData(3, 0, 1.5, 0.6826894921370859)]
    [InlineData(5, 0.75, 1.5, 0.863197355415383)]
    [InlineData(3, -1, 0.8, 0.7331254456521911)]
    [InlineData(7, 2, 2, 0.7703928843880772)]
    public void HitRate_PublishedValues_Match(double width, double bias, double spread, double expected) =>
        Assert.Equal(expected, HitModel.HitRate(width, bias, spread), 1e-12);

    // Source: reference statistics-checks.json, width.exact (SciPy 1.10.1 brentq), tolerance 1e-8.
    [Theory]
    [InlineData(0.5, 0, 1, 1.3489795003921639)]
    [InlineData(0.70710678118, 0, 1, 2.1035917203019143)]
    [InlineData(0.75, 0, 1, 2.3006987607520157)]
    [InlineData(0.79370052598, 0, 1, 2.5276130756770216)]
    [InlineData(0.8, 0, 1, 2.5631031310892007)]
    [InlineData(0.8413447460685429, 0, 1, 2.8192174185869088)]
    [InlineData(0.85, 0, 1, 2.879062941876919)]
    [InlineData(0.9, 0, 1, 3.2897072539029444)]
    [InlineData(0.95, 0, 1, 3.9199279690801077)]
    [InlineData(0.75, 0.5, 1, 2.5880231883310003)]
    [InlineData(0.75, 1, 1, 3.3718295688109436)]
    [InlineData(0.75, 2, 1, 5.348988773547616)]
    [InlineData(0.75, 0.75, 1.5, 3.882034782496492)]
    [InlineData(0.8413447460685429, 0.5, 1.5, 4.461184623715643)]
    public void WidthBoards_PublishedValues_Match(double goal, double bias, double spread, double expected) =>
        Assert.Equal(expected, HitModel.WidthBoards(goal, bias, spread), 1e-8);

    [Fact]
    public void WidthBoards_ThenHitRate_GivesTheGoal() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[-30, 30], Gen.Double[0.05, 10]).Sample((goal, bias, spread) =>
            Assert.Equal(goal, HitModel.HitRate(HitModel.WidthBoards(goal, bias, spread), bias, spread), 1e-10));

    [Fact]
    public void WidthBoards_BiasToTheOtherSide_IsTheSameToTheLastBit() =>
        Gen.Select(Gen.Double[0.01, 0.99], Gen.Double[0, 10], Gen.Double[0.1, 5]).Sample((goal, bias, spread) =>
            HitModel.WidthBoards(goal, bias, spread) == HitModel.WidthBoards(goal, -bias, spread));

    [Theory]
    [InlineData(0, 0, 1)]
    [InlineData(1, 0, 1)]
    [InlineData(0.75, 0, 0)]
    [InlineData(0.75, double.NaN, 1)]
    public void WidthBoards_OutsideItsRange_Throws(double goal, double bias, double spread) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => HitModel.WidthBoards(goal, bias, spread));
}
