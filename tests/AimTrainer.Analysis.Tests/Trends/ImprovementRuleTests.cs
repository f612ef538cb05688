using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class ImprovementRuleTests
{
    private const int Sessions = 48;
    private const double Allowed = 0.05;

    // A result this unlikely, were the share really at its bound, decides.
    private const double Doubt = 0.01;

    [Fact]
    public void Of_TwoThousandUnchangingBowlers_AtMostFivePercentAreToldTheyImproved()
    {
        // So few must be told that a rule that tells 5 % would tell so few with a chance of at most 1 %.
        // Source of what is expected: reference statistics.md section 4.8: 3.0 % of 3000 (99 %, every 4th session, false "improved").
        const int Bowlers = 2000;
        var told = Enumerable.Range(0, Bowlers).Count(bowler => SaysImproved(ImprovementRule.Of(Unchanging(bowler, 15))));
        Assert.True(Binomial.AtMost(told, Bowlers, Allowed) <= Doubt, $"{told} of {Bowlers}");

        // And not fewer than the published 3 % allows: else this would not be the rule.
        Assert.True(Binomial.AtMost(told, Bowlers, 0.03) > Doubt / 10 && Binomial.AtLeast(told, Bowlers, 0.03) > Doubt / 10, $"{told} of {Bowlers}");
    }

    [Fact]
    public void Of_LookedAtAfterEverySessionAt95_WouldTellTooMany()
    {
        // The bound above can fail: the usual 95 % interval, looked at after every session, fails it.
        // Source: reference statistics.md section 4.8: 18.9 % false "improved".
        const int Bowlers = 300;
        var told = Enumerable.Range(0, Bowlers).Count(bowler =>
        {
            var series = Unchanging(bowler, 15);
            return Enumerable.Range(8, Sessions - 7).Any(count => TheilSen.Of([.. series.Take(count)])!.Side < 0);
        });
        Assert.True(Binomial.AtMost(told, Bowlers, Allowed) > Doubt);
        Assert.True(Binomial.AtLeast(told, Bowlers, Allowed) <= Doubt, $"only {told} of {Bowlers}");
        Assert.InRange((double)told / Bowlers, 0.189 - 0.09, 0.189 + 0.09);
    }

    [Fact]
    public void Of_TwoKindsOfTest_AtMostFivePercentAreToldByEither()
    {
        const int Bowlers = 1000;
        var told = Enumerable.Range(0, Bowlers).Count(bowler =>
        {
            var record = TestRecord.Of(Practice.Unchanging((ulong)bowler, Sessions, 15, 13.5, 40));
            Assert.Equal((2, Sessions), (record.Kinds, record.Series[1].Points.Count));
            return record.Series.Any(series => SaysImproved(ImprovementRule.Of([.. series.Points.Select((point, i) => new TrendPoint(i, point.LogSpread))], record.Kinds)));
        });
        Assert.True(Binomial.AtMost(told, Bowlers, Allowed) <= Doubt, $"{told} of {Bowlers}");
    }

    [Theory]
    [InlineData(0, 0, 8)]
    [InlineData(1, 0, 8)]
    [InlineData(7, 0, 8)]
    [InlineData(8, 1, 12)]
    [InlineData(9, 1, 12)]
    [InlineData(11, 1, 12)]
    [InlineData(12, 2, 16)]
    [InlineData(48, 11, 52)]
    public void Of_SoManySessions_LooksAtEveryFourthFromEight(int sessions, int looks, int next)
    {
        var rule = ImprovementRule.Of([.. Unchanging(1, 15).Take(sessions)]);
        Assert.Equal((looks, next), (rule.Looks.Count, rule.NextLookAt));
        Assert.Equal(looks == 0, rule.Verdict == ImprovementVerdict.TooFew);
    }

    [Fact]
    public void Of_BetweenLooks_TheWordStaysWhatItWas()
    {
        var falling = Series.Of([.. Enumerable.Range(0, 8).Select(i => -0.1 * i)]);
        var wild = falling.Concat(Enumerable.Range(9, 3).Select(i => new TrendPoint(i, 5))).ToArray();
        Assert.Equal(ImprovementVerdict.Improved, ImprovementRule.Of(falling).Verdict);
        Assert.Equal(ImprovementVerdict.Improved, ImprovementRule.Of(wild).Verdict);
        Assert.Equal(ImprovementVerdict.NotShown, ImprovementRule.Of([.. wild, new TrendPoint(12, 5)]).Verdict);
    }

    [Fact]
    public void Of_Rising_IsWorse() =>
        Assert.Equal(ImprovementVerdict.Worse, ImprovementRule.Of(Series.Of([.. Enumerable.Range(0, 12).Select(i => 0.1 * i)])).Verdict);

    [Fact]
    public void Of_AllEqual_ShowsNothing()
    {
        var rule = ImprovementRule.Of(Series.Of([.. Enumerable.Repeat(0.5, 12)]));
        Assert.Equal((ImprovementVerdict.NotShown, (double?)null), (rule.Verdict, rule.Looks[^1].Low));
    }

    [Fact]
    public void ConfidenceFor_MoreKinds_SharesTheErrorAmongThem()
    {
        Assert.Equal(0.99, ImprovementRule.ConfidenceFor(1), 1e-15);
        Assert.Equal(0.9975, ImprovementRule.ConfidenceFor(4), 1e-15);
        Assert.Throws<ArgumentOutOfRangeException>(() => ImprovementRule.ConfidenceFor(0));
    }

    [Fact]
    public void Of_ScaledSpread_SaysTheSame() =>
        Gen.Select(Gen.Double[0.5, 2].Array[8, 24], Gen.Double[0.2, 5]).Sample((spreads, factor) => Assert.Equal(
            ImprovementRule.Of(Series.Of([.. spreads.Select(spread => Math.Log(spread))])).Verdict,
            ImprovementRule.Of(Series.Of([.. spreads.Select(spread => Math.Log(spread) + Math.Log(factor))])).Verdict));

    private static bool SaysImproved(ImprovementRule rule) => rule.Looks.Any(look => look.Verdict == ImprovementVerdict.Improved);

    // The log spread of test blocks of a bowler who never changes.
    private static TrendPoint[] Unchanging(int bowler, int shots)
    {
        var noise = new Normal((ulong)bowler);
        var (logs, session) = (new double[Sessions], new double[shots]);
        for (var i = 0; i < Sessions; i++)
        {
            for (var shot = 0; shot < shots; shot++)
            {
                session[shot] = 1.5 * noise.Next();
            }

            logs[i] = Math.Log(TrendSeries.SquaresAboutMean(session) / (shots - 1)) / 2;
        }

        return Series.Of(logs);
    }
}
