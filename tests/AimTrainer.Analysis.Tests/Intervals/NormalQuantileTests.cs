namespace AimTrainer.Analysis.Tests;

public sealed class NormalQuantileTests
{
    [Theory]
    // Source: sf.normal, computed with SciPy 1.10.1 / NumPy 1.24.2; tolerance 1e-12.
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
    public void Of_KnownShares_AgreesWithAnotherProgram(double share, double z)
    {
        Assert.Equal(z, NormalQuantile.Of(share), 1e-12);
        Assert.Equal(-z, NormalQuantile.Of(1 - share), 1e-12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void Of_NoShare_Throws(double share) => Assert.Throws<ArgumentOutOfRangeException>(() => NormalQuantile.Of(share));
}
