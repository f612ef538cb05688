namespace AimTrainer.Domain.Tests;

/// <summary>Long seeded runs of the rules against what theory, or an independent simulation, says they do.</summary>
public class SizingSimulationTests
{
    private const double Spread = 1.5;

    // Source: reference statistics-checks.json, staircase.stationary (exact stationary distribution of the Markov chain, spread 1, so
    // that widths here are 1.5 times as wide). Not taken over: one hit narrower by half an octave, which the limits of a target's width cut
    // short. 400,000 shots: over six other seeds the worst was 0.0004 off in hit rate and 0.6 % in width, against 0.004 and 1 % allowed.
    [Theory]
    [InlineData(1, 0.0625, 0.500000, 1.339784)]
    [InlineData(2, 0.0625, 0.706661, 2.103590)]
    [InlineData(3, 0.0625, 0.793202, 2.534660)]
    [InlineData(1, 0.125, 0.500000, 1.330775)]
    [InlineData(2, 0.125, 0.706219, 2.103952)]
    [InlineData(3, 0.125, 0.792705, 2.542319)]
    [InlineData(1, 0.25, 0.500000, 1.313337)]
    [InlineData(2, 0.25, 0.705349, 2.105805)]
    [InlineData(3, 0.25, 0.791721, 2.559514)]
    [InlineData(2, 0.5, 0.703661, 2.114195)]
    [InlineData(3, 0.5, 0.789790, 2.601648)]
    public void Staircase_LongRun_SettlesWhereTheMarkovChainDoes(int hitsToNarrow, double octaves, double hitRate, double width) =>
        Settles(new StaircaseSizing(hitsToNarrow, 1, new StaircaseStep.ByFactor(Math.Pow(2, octaves)), 2), hitRate, width);

    // Source: the same.
    [Theory]
    [InlineData(3.0 / 4, 0.041666666666666664, 0.750000, 2.309878)]
    [InlineData(3.0 / 4, 0.08333333333333333, 0.750000, 2.320463)]
    [InlineData(3.0 / 4, 0.125, 0.750000, 2.332530)]
    [InlineData(3.0 / 4, 0.25, 0.750000, 2.378249)]
    [InlineData(5.0 / 6, 0.025, 0.833333, 2.788448)]
    [InlineData(5.0 / 6, 0.05, 0.833333, 2.812924)]
    [InlineData(5.0 / 6, 0.1, 0.833333, 2.868350)]
    public void Weighted_LongRun_SettlesWhereTheMarkovChainDoes(double goal, double octaves, double hitRate, double width) =>
        Settles(new WeightedSizing(goal, octaves), hitRate, width);

    // Source: reference statistics-checks.json, sim.hit_rate_during_drill, "P population", "NIG predictive width", tolerance 0.006:
    // bowlers with log spread normal around 1.5 boards (SD 0.4) and a bias of half a spread (SD), all started at the width that a spread
    // of 1.5 hits 75 % of the time. The reference says that its prior matches the population and not with which numbers: here a bias
    // worth 4 shots (1 / 0.5²), and the inverse gamma distribution whose log spread has that mean and SD (a = 2: trigamma(2) = 0.645 =
    // (2 * 0.4)²; log b = log 1.5² + digamma(2)).
    [Fact]
    public void ScatterPosterior_PopulationOfBowlers_HoldsTheGoalFromTheFirstShots()
    {
        const int Bowlers = 4000;
        var prior = ScatterPosterior.FromPrior(0, 4, 2, Spread * Spread * Math.Exp(0.42278433509846714));
        var sums = Drill(
            Bowlers,
            1,
            prior,
            _ => HitModel.WidthBoards(0.75, 0, Spread),
            (posterior, miss) => posterior.Add(miss),
            posterior => posterior.PredictiveWidthBoards(0.75));
        Assert.Equal(0.7479805747446379, sums.Mean1To10, 0.006);
        Assert.Equal(0.10290721157181595, sums.Off1To10, 0.006);
        Assert.Equal(0.751141647331353, sums.Mean11To30, 0.006);
        Assert.Equal(0.0595164459746288, sums.Off11To30, 0.006);
        Assert.Equal(0.0402293471087202, sums.Off31To60, 0.006);
    }

    // The rule as bowlers meet it differs from the reference's bare estimator: a weaker prior (its section 10), forgetting, at most 20 % a
    // shot, half boards, 1 to 9 boards, gross misses left out. So its first shots are a little easier (the weak prior is honest about what
    // it does not know), and later it misses the goal by a little more (forgetting and rounding). Both are bounded here: by 0.02 in
    // the mean, by 0.015 in how far the single bowler is off.
    [Fact]
    public void Scatter_PopulationOfBowlers_StaysNearTheBareEstimator()
    {
        const int Bowlers = 2000;
        var rule = new ScatterSizing(0.75, 0.98, Sequence.Boards(Spread));
        var sums = Drill(
            Bowlers,
            2,
            rule.Start(Sequence.Boards(HitModel.WidthBoards(0.75, 0, Spread))),
            state => state.Width.Boards,
            (state, miss) => rule.After(state, new SizedShot(Math.Abs(miss) * 2 <= state.Width.Boards, Sequence.Boards(miss))),
            state => state.Width.Boards);
        Assert.Equal(0.7479805747446379, sums.Mean1To10, 0.02);
        Assert.Equal(0.10290721157181595, sums.Off1To10, 0.015);
        Assert.Equal(0.751141647331353, sums.Mean11To30, 0.02);
        Assert.Equal(0.0595164459746288, sums.Off11To30, 0.015);
        Assert.Equal(0.0402293471087202, sums.Off31To60, 0.015);
    }

    // Source: reference statistics.md section 2.6 (e): a prior that is half the true spread costs the first ten shots (0.63 instead of
    // 0.75, simulated 0.6250) and hardly more than those (0.7190 in shots 11 to 30).
    [Fact]
    public void ScatterPosterior_WilderBowlerThanThought_IsCaughtUpWithInThirtyShots()
    {
        var prior = ScatterPosterior.FromPrior(0, 4, 2, Spread * Spread * Math.Exp(0.42278433509846714));
        var sums = Drill(
            2000,
            3,
            prior,
            _ => HitModel.WidthBoards(0.75, 0, Spread),
            (posterior, miss) => posterior.Add(miss),
            posterior => posterior.PredictiveWidthBoards(0.75),
            (_, _) => (1, 3));
        Assert.Equal(0.6250345895480857, sums.Mean1To10, 0.015);
        Assert.Equal(0.7189591847967867, sums.Mean11To30, 0.01);
    }

    private static void Settles(Sizing rule, double hitRate, double width)
    {
        const int Shots = 400_000;
        rule = rule with { Narrowest = Sequence.Boards(Target.Narrowest), Widest = Sequence.Boards(Target.Widest) };
        var state = rule.Start(Sequence.Boards(HitModel.WidthBoards(0.75, 0, Spread)));
        var hits = 0;
        var logs = 0.0;
        for (var shot = 0; shot < Shots; shot++)
        {
            var held = SeededRandom.Unit(2024, (ulong)shot) < HitModel.HitRate(state.Width.Boards, 0, Spread);
            hits += held ? 1 : 0;
            logs += Math.Log(state.Width.Boards);
            state = rule.After(state, new SizedShot(held, BoardOffset.Zero));
        }

        Assert.Equal(hitRate, (double)hits / Shots, 0.004);
        Assert.Equal(1, Math.Exp(logs / Shots) / (width * Spread), 0.01);
    }

    // Each bowler throws 60 shots. "Mean" is the true chance to hit at the width shown, "off" its mean distance from 75 %.
    private static DrillSums Drill<T>(
        int bowlers,
        ulong seed,
        T start,
        Func<T, double> firstWidth,
        Func<T, double, T> after,
        Func<T, double> width,
        Func<ulong, ulong, (double Bias, double Spread)>? bowlerAt = null)
    {
        double mean1 = 0, off1 = 0, mean11 = 0, off11 = 0, off31 = 0;
        ulong position = 0;
        for (var bowler = 0; bowler < bowlers; bowler++)
        {
            var (bias, spread) = (bowlerAt ?? OfPopulation)(seed, position);
            position += 2;
            var now = start;
            var shown = firstWidth(now);
            for (var shot = 1; shot <= 60; shot++)
            {
                var chance = HitModel.HitRate(shown, bias, spread);
                var off = Math.Abs(chance - 0.75);
                if (shot <= 10)
                {
                    mean1 += chance / 10;
                    off1 += off / 10;
                }
                else if (shot <= 30)
                {
                    mean11 += chance / 20;
                    off11 += off / 20;
                }
                else
                {
                    off31 += off / 30;
                }

                now = after(now, Math.Round(bias + (spread * Sequence.Normal(seed, position++)), 2));
                shown = width(now);
            }
        }

        return new(mean1 / bowlers, off1 / bowlers, mean11 / bowlers, off11 / bowlers, off31 / bowlers);
    }

    private static (double Bias, double Spread) OfPopulation(ulong seed, ulong position)
    {
        var spread = Spread * Math.Exp(0.4 * Sequence.Normal(seed, position));
        return (0.5 * spread * Sequence.Normal(seed, position + 1), spread);
    }

    private sealed record DrillSums(double Mean1To10, double Off1To10, double Mean11To30, double Off11To30, double Off31To60);
}
