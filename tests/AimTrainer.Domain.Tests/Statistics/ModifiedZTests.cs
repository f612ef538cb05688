namespace AimTrainer.Domain.Tests;

public class ModifiedZTests
{
    private static readonly double[] Published = [2.1, 2.6, 2.4, 2.5, 2.3, 2.1, 2.3, 2.6, 8.2, 8.3];

    // Source: reference statistics-checks.json, modz.iglewicz (Iglewicz and Hoaglin 1993), tolerance 1e-7.
    [Theory]
    [InlineData(2.1, -1.57383333)]
    [InlineData(2.6, 0.6745)]
    [InlineData(2.4, -0.22483333)]
    [InlineData(2.5, 0.22483333)]
    [InlineData(2.3, -0.6745)]
    [InlineData(8.2, 25.85583333)]
    [InlineData(8.3, 26.3055)]
    public void Of_PublishedSample_Matches(double value, double expected) => Assert.Equal(expected, ModifiedZ.Of(value, Published), 1e-7);

    // Source: reference statistics-checks.json, modz.iglewicz: the ninth and tenth of ten are flagged.
    [Fact]
    public void Of_PublishedSample_FlagsTheLastTwoOnly() =>
        Assert.Equal([8.2, 8.3], Published.Where(y => Math.Abs(ModifiedZ.Of(y, Published)) > ModifiedZ.Cut));

    // By hand: median 0, median deviation 0, mean deviation 3/8; 3 / (1.253314 * 0.375). The fallback: reference statistics.md section 8.
    [Fact]
    public void Of_MoreThanHalfTied_UsesTheMeanDeviation() =>
        Assert.Equal(3 / (1.253314 * 0.375), ModifiedZ.Of(3, [0, 0, 0, 0, 0, 0, 1, 2]), 1e-12);

    // By hand: 0.6745 * 2 / 0.5.
    [Fact]
    public void Of_AllTiedWithALeastDeviation_UsesIt() =>
        Assert.Equal(0.6745 * 2 / 0.5, ModifiedZ.Of(2, [0, 0, 0, 0, 0, 0, 0, 0], 0.5), 1e-12);

    [Fact]
    public void Of_AllTied_IsZeroOrInfinite()
    {
        Assert.Equal(0, ModifiedZ.Of(1, [1, 1, 1]));
        Assert.Equal(double.NegativeInfinity, ModifiedZ.Of(0.5, [1, 1, 1]));
    }

    [Fact]
    public void Of_EmptySample_Throws() => Assert.Throws<ArgumentException>(() => ModifiedZ.Of(1, []));
}
