using CsCheck;

namespace AimTrainer.Domain.Tests;

public class ScatterPosteriorTests
{
    private static readonly double[] TenMisses = [0.4, -0.8, 1.1, 0.8, -0.3, 2.0, 0.1, -1.1, 1.5, 0.3];

    // Source: reference statistics-checks.json, width.n0 (SciPy 1.10.1), tolerance 1e-7.
    [Fact]
    public void FromPrior_NoShots_PredictsThePriorsWidth()
    {
        var prior = Prior();
        Assert.Equal(4, prior.PredictiveFreedom, 1e-12);
        Assert.Equal(2.2627416997969525, prior.PredictiveScaleBoards, 1e-7);
        Assert.Equal(6.084048819911013, prior.PredictiveWidthBoards(0.75), 1e-7);
    }

    // Source: reference statistics-checks.json, width.data, nig_post and nig_w75, nig_w85 (SciPy 1.10.1), tolerance 1e-7.
    [Fact]
    public void Add_TenShots_MatchesThePublishedPosterior()
    {
        var posterior = After(TenMisses);
        Assert.Equal(0.36363636363636365, posterior.BiasBoards, 1e-7);
        Assert.Equal(11, posterior.BiasWeight, 1e-7);
        Assert.Equal(7, posterior.Shape, 1e-7);
        Assert.Equal(9.542727272727275, posterior.Scale, 1e-7);
        Assert.Equal(14, posterior.PredictiveFreedom, 1e-7);
        Assert.Equal(1.2194991907620052, posterior.PredictiveScaleBoards, 1e-7);
        Assert.Equal(3.0528210996817178, posterior.PredictiveWidthBoards(0.75), 1e-7);
        Assert.Equal(3.864040591727745, posterior.PredictiveWidthBoards(0.85), 1e-7);
    }

    // Source: reference statistics.md section 2.5, worked example, "first 3 shots only: ... NIG 3.7159" (four decimals).
    [Fact]
    public void Add_ThreeShots_MatchesTheWorkedExample() =>
        Assert.Equal(3.7159, After(TenMisses[..3]).PredictiveWidthBoards(0.75), 0.00005);

    // Source: reference statistics-checks.json, width.data, nig_w75_90pct_credible_mc: 2.21908519309988 to 4.309026388202862 (Monte Carlo, to
    // 0.01). Its half width in logarithms over 1.645 is a standard deviation of 0.2017; that of the spread alone is a little less, for
    // the bias adds to the width's.
    [Fact]
    public void SpreadUncertainty_TenShots_IsThatOfThePublishedCredibleRange()
    {
        var published = Math.Log(4.309026388202862 / 2.21908519309988) / 2 / StandardNormal.Quantile(0.95);
        Assert.InRange(After(TenMisses).SpreadUncertainty, 0.95 * published, published);
    }

    // By hand: sqrt(trigamma(2)) / 2 with trigamma(2) = π²/6 - 1.
    [Fact]
    public void SpreadUncertainty_NoShots_IsFortyPercent() =>
        Assert.Equal(Math.Sqrt((Math.PI * Math.PI / 6) - 1) / 2, Prior().SpreadUncertainty, 1e-12);

    // Source: reference statistics.md section 2.5 ("multiply n, Σe, Σe² by ρ"), worked out the other way round: shots of given weights.
    [Fact]
    public void Discounted_BeforeEachShot_WeighsOldShotsLess()
    {
        const double Keep = 0.9;
        var posterior = TenMisses.Aggregate(Prior(), (known, miss) => known.Discounted(Keep).Add(miss));
        var weights = TenMisses.Select((_, i) => Math.Pow(Keep, TenMisses.Length - 1 - i)).ToArray();
        var shots = weights.Sum();
        var mean = weights.Zip(TenMisses, (weight, miss) => weight * miss).Sum() / shots;
        var within = weights.Zip(TenMisses, (weight, miss) => weight * (miss - mean) * (miss - mean)).Sum();
        Assert.Equal(shots, posterior.Shots, 1e-12);
        Assert.Equal(shots * mean / (shots + 1), posterior.BiasBoards, 1e-12);
        Assert.Equal(5.12 + (within / 2) + (shots * mean * mean / (2 * (shots + 1))), posterior.Scale, 1e-12);
    }

    [Fact]
    public void PredictiveWidthBoards_MirroredMisses_IsTheSameToTheLastBit() =>
        Gen.Double[-8, 8].List[0, 40].Sample(misses =>
            After([.. misses]).PredictiveWidthBoards(0.75) == After([.. misses.Select(miss => -miss)]).PredictiveWidthBoards(0.75));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e9)]
    public void Add_NoMissOfALane_Throws(double miss) => Assert.Throws<ArgumentOutOfRangeException>(() => Prior().Add(miss));

    [Fact]
    public void FromPrior_NoSpread_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ScatterPosterior.FromPrior(BoardOffset.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => ScatterPosterior.FromPrior(0, 0, 2, 5));
    }

    private static ScatterPosterior Prior() => ScatterPosterior.FromPrior(Sequence.Boards(1.6));

    private static ScatterPosterior After(double[] misses) => misses.Aggregate(Prior(), (known, miss) => known.Add(miss));
}
