namespace AimTrainer.Analysis.Tests;

/// <summary>How far a comparison can be trusted, by comparisons on real paths; the wide study is the benchmark <c>comparison</c>.</summary>
public sealed class ComparisonSimulationTests
{
    [Fact]
    public void Compare_UnequalSpeedDriftAndGrossMisses_LimitsOfEveryMeasureHoldTheTruthAsOftenAsTheySay()
    {
        var result = new ComparisonStudy(new("all of it", 12, 1.3, 0.5, 0.02, 0.05), 11).Run(1_000);

        Assert.Equal(["entryBoard", "breakpointBoard", "breakpointFeet", "entryAngle", "sharpness"], result.Measures.Select(one => one.Name));
        foreach (var one in result.Measures)
        {
            Assert.True(one.Held is >= 0.93 and <= 0.97, $"{one.Name}: {one.Held}");

            // Without adjustment they do not: the faster ball hooks less.
            Assert.True(one.HeldUnadjusted < (one.Name == "sharpness" ? 0.94 : 0.91), $"{one.Name}: {one.HeldUnadjusted}");
        }

        Assert.True(result["entryBoard"].Truth > 3);
        Assert.True(result["breakpointBoard"].Claimed > 0.9);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(8)]
    public void Compare_EqualBalls_AreCalledDifferentInAtMostFivePercent(int each)
    {
        var result = new ComparisonStudy(new("equal balls", each, 1, 0.5, 0.02, 0.05), 11).Run(600);

        Assert.True(result.AnyClaim <= 0.05, $"{result.AnyClaim}");
        Assert.True(result.AnySpreadClaim <= 0.05, $"{result.AnySpreadClaim}");
        Assert.All(result.Measures, one => Assert.Equal(0, one.Truth, 1e-9));
    }
}
