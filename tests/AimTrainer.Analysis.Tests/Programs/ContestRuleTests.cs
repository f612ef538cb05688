namespace AimTrainer.Analysis.Tests;

public sealed class ContestRuleTests
{
    private static readonly double[] Sizes = [0.5, 1.5, 2.5, 3.5];

    [Fact]
    public void ByHeld_BeginnerWhoThrowsBetterThanBefore_BeatsTheExpertWhoDoesNot()
    {
        var beginner = new ContestEntry("Ann", Misses(40, 4), Misses(12, 2));
        var expert = new ContestEntry("Ben", Misses(40, 1), Misses(12, 1));

        var places = ContestRule.ByHeld([expert, beginner]);

        Assert.Equal(["Ann", "Ben"], places.Select(place => place.Bowler));
        Assert.Equal([1, 2], places.Select(place => place.Rank!.Value));

        // Who throws as before holds her own width with half of her shots, whatever her level.
        Assert.Equal(0.5, places[1].Value);
        Assert.Equal(4, places[1].OwnBoards!.Value, 12);
        Assert.Equal(16, places[0].OwnBoards!.Value, 12);
    }

    [Fact]
    public void ByHeld_EqualShares_ShareTheRankAndTheNextIsThird()
    {
        var places = ContestRule.ByHeld([new("Ann", Misses(40, 1), Misses(12, 1)), new("Ben", Misses(40, 2), Misses(12, 2)), new("Cas", Misses(40, 1), Misses(12, 9))]);

        Assert.Equal([1, 1, 3], places.Select(place => place.Rank!.Value));
    }

    [Fact]
    public void ByHeld_TooFewTestsBefore_ThrowsWithoutARankAndIsToldWhy()
    {
        var place = Assert.Single(ContestRule.ByHeld([new("Ann", Misses(29, 1), Misses(12, 1))]));

        Assert.Null(place.Rank);
        Assert.Contains("29 of 30 test shots before the contest", place.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void ByImprovement_RatioOfSpreads_WithItsLimits()
    {
        var places = ContestRule.ByImprovement([new("Ann", Misses(40, 4), Misses(40, 2)), new("Ben", Misses(40, 1), Misses(40, 1))]);

        Assert.Equal(["Ann", "Ben"], places.Select(place => place.Bowler));
        Assert.Equal(0.5, places[0].Value!.Value, 12);
        Assert.InRange(places[0].High!.Value, 0.5, 1);
        Assert.InRange(places[1].High!.Value, 1, 2);
    }

    [Theory]
    [InlineData(30, 0.4, 1.0)]
    [InlineData(30, 1.4, 3.0)]
    [InlineData(30, 9.0, null)]
    [InlineData(29, 0.4, null)]
    public void WidthHeld_NarrowestWithTheLowerLimitAtAHalf(int shots, double size, double? width) =>
        Assert.Equal(width, WidthHeld.Of(Enumerable.Repeat(size, shots)).Boards);

    [Fact]
    public void WidthHeld_TwoThirdsOfThirty_IsNotYetEnough()
    {
        // Source: Wilson's 95 % interval of 20 of 30 is 0.488 to 0.808 and that of 21 of 30 is 0.521 to 0.833 (worked out by hand from Wilson 1927, Journal of the American Statistical Association 22:209-212).
        Assert.Null(WidthHeld.Of(Enumerable.Repeat(1.4, 20).Concat(Enumerable.Repeat(9.0, 10))).Boards);
        Assert.Equal(3, WidthHeld.Of(Enumerable.Repeat(1.4, 21).Concat(Enumerable.Repeat(9.0, 9))).Boards);
    }

    private static double[] Misses(int count, double scale) => [.. Enumerable.Range(0, count).Select(i => scale * Sizes[i % 4] * (i % 8 < 4 ? 1 : -1))];
}
