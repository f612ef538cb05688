namespace AimTrainer.Analysis.Tests;

public sealed class NeedRuleTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 3, 18, 0, 0, TimeSpan.Zero);

    private static readonly double[] Steady = [-1, 1, -1, 1, -1, 1, -1, 1, -1, 1];

    [Fact]
    public void Of_TooFewShots_SaysNothingAndWhy()
    {
        var need = NeedRule.Of(Shots(Steady, null), sore: false, hasTurn: true, Start.AddMinutes(10));

        Assert.Empty(need.Reasons);
        Assert.Equal("10 of 20 shots with a known crossing at one place", need.SpreadRatio.Why);
        Assert.Equal("speed is not measured", need.SpeedChangeMph.Why);
    }

    [Fact]
    public void Of_TheSameSpread_NeedsNothing()
    {
        var need = NeedRule.Of(Shots([.. Steady, .. Steady], null), false, true, Start.AddMinutes(20));

        Assert.Empty(need.Reasons);
        Assert.Equal(1, need.SpreadRatio.Value!.Value, 12);

        // Source: the 0.975 quantile of F(9, 9) is 4.026, NIST/SEMATECH e-Handbook, section 1.3.6.7.3 (upper critical values of the F distribution at 2.5 %).
        Assert.Equal(Math.Sqrt(4.026), need.SpreadRatio.High!.Value, 3);
    }

    [Fact]
    public void Of_SpreadThreeTimesAsLarge_IsGrowingAndTiredOnlyWithSlowerThrows()
    {
        double[] misses = [.. Steady, .. Steady.Select(miss => 3 * miss)];
        double[] slower = [.. Steady.Select(wobble => 17 + (wobble / 10)), .. Steady.Select(wobble => 16 + (wobble / 10))];

        Assert.Equal([NeedKind.SpreadGrowing], NeedRule.Of(Shots(misses, null), false, true, Start.AddMinutes(20)).Reasons);
        Assert.Equal([NeedKind.Tired], NeedRule.Of(Shots(misses, slower), false, true, Start.AddMinutes(20)).Reasons);
        Assert.Equal([NeedKind.SpreadGrowing], NeedRule.Of(Shots(misses, [.. slower.Reverse()]), false, true, Start.AddMinutes(20)).Reasons);
    }

    [Fact]
    public void Of_Sore_ComesFirstWhateverElse()
    {
        var need = NeedRule.Of(Shots([.. Steady, .. Steady.Select(miss => 3 * miss)], null), sore: true, true, Start.AddMinutes(20));

        Assert.Equal([NeedKind.Sore, NeedKind.SpreadGrowing], need.Reasons);
    }

    [Theory]
    [InlineData(9 + 3.0, true, false)]
    [InlineData(9 + 3.1, true, true)]
    [InlineData(9 + 30, false, false)]
    public void Of_NextShotLongInComing_IsOffPaceOnlyForWhoHasTheTurn(double minutes, bool hasTurn, bool offPace) =>
        Assert.Equal(offPace, NeedRule.Of(Shots(Steady, null), false, hasTurn, Start.AddMinutes(minutes)).Reasons.Count == 1);

    [Fact]
    public void MostPressingFirst_SoreThenGrowingThenNothing()
    {
        var nothing = NeedRule.Of(Shots(Steady, null), false, true, Start);
        var growing = NeedRule.Of(Shots([.. Steady, .. Steady.Select(miss => 3 * miss)], null), false, true, Start.AddMinutes(20));
        var sore = NeedRule.Of([], true, true, Start);

        Assert.Equal([sore, growing, nothing], new[] { nothing, growing, sore }.Order(NeedRule.MostPressingFirst));
    }

    private static PulseShot[] Shots(double[] misses, double[]? speeds) =>
        [.. misses.Select((miss, i) => new PulseShot(Start.AddMinutes(i), "arrow 2", miss, speeds?[i]))];
}
