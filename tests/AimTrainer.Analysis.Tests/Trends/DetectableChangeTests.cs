namespace AimTrainer.Analysis.Tests;

public sealed class DetectableChangeTests
{
    [Theory]
    // Source: reference statistics.md section 4.7: total fall, 80 % power, two-sided 5 %, linear in sessions; whole per cent.
    [InlineData(6, 15, 47, 51, 60)]
    [InlineData(6, 30, 36, 42, 55)]
    [InlineData(6, 60, 27, 37, 52)]
    [InlineData(12, 15, 39, 42, 51)]
    [InlineData(12, 30, 29, 35, 46)]
    [InlineData(12, 60, 21, 30, 43)]
    [InlineData(24, 15, 30, 33, 41)]
    [InlineData(24, 30, 22, 27, 37)]
    [InlineData(24, 60, 16, 23, 34)]
    [InlineData(48, 15, 23, 25, 31)]
    [InlineData(48, 30, 16, 20, 28)]
    [InlineData(48, 60, 12, 17, 26)]
    public void TotalFall_PublishedTable_AgreesToItsPercent(int sessions, int shots, int alike, int some, int much)
    {
        int Percent(double between) =>
            (int)Math.Round(100 * DetectableChange.TotalFall(sessions, DetectableChange.PointSpread(shots - 1, between), 0.95)!.Value);
        Assert.Equal((alike, some, much), (Percent(0), Percent(0.1), Percent(0.2)));
    }

    [Fact]
    public void TotalFall_FewerThanThree_IsUnknown() => Assert.Null(DetectableChange.TotalFall(2, 0.1, 0.95));

    [Theory]
    [InlineData(8, 1)]
    [InlineData(12, 1)]
    [InlineData(24, 1)]
    [InlineData(48, 1)]
    [InlineData(12, 4)]
    [InlineData(24, 2)]
    public void TotalLogByRule_SimulatedFall_IsFoundFourTimesInFive(int sessions, int kinds)
    {
        // 1000 bowlers whose spread falls by just so much: found in 80 %, within four standard errors and the fit of the formula.
        var spread = DetectableChange.PointSpread(29, 0.1);
        var slope = DetectableChange.TotalLogByRule(sessions, spread, ImprovementRule.ConfidenceFor(kinds))!.Value / (sessions - 1);
        var found = Enumerable.Range(0, 1000).Count(bowler =>
        {
            var noise = new Normal((ulong)((bowler * 100) + sessions + kinds));
            var series = Series.Of([.. Enumerable.Range(0, sessions).Select(i => (-slope * i) + (spread * noise.Next()))]);
            return TheilSen.Of(series, ImprovementRule.ConfidenceFor(kinds))!.Side < 0;
        });
        Assert.InRange(found / 1000.0, 0.74, 0.86);
    }

    [Fact]
    public void TotalLogByRule_BeforeTheFirstLookOrWithoutLimits_IsUnknown()
    {
        Assert.Null(DetectableChange.TotalLogByRule(7, 0.1, 0.99));
        Assert.Null(DetectableChange.TotalLogByRule(8, 0.1, ImprovementRule.ConfidenceFor(100)));
    }

    [Fact]
    public void SessionsToShow_Pace_IsTheFirstLookThatIsLongEnough()
    {
        var sessions = DetectableChange.SessionsToShow(-0.01, 0.15, 10, 0.99)!.Value;
        Assert.Equal(0, sessions % ImprovementRule.Every);
        Assert.True(DetectableChange.TotalLogByRule(sessions, 0.15, 0.99) <= 0.01 * (sessions - 1));
        Assert.True(DetectableChange.TotalLogByRule(sessions - 4, 0.15, 0.99) > 0.01 * (sessions - 5));
        Assert.Null(DetectableChange.SessionsToShow(1e-9, 0.15, 10, 0.99));
        Assert.Equal(sessions, DetectableChange.SessionsForTotal(DetectableChange.TotalLogByRule(sessions, 0.15, 0.99)!.Value, 0.15, 10, 0.99));
    }
}
