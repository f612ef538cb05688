namespace AimTrainer.Analysis.Tests;

/// <summary>How far a comparison can be trusted, by 1,000 comparisons on real paths; the wide study is the benchmark <c>comparison</c>.</summary>
public sealed class ComparisonSimulationTests
{
    // Judged measures of the whole path; how far the others hold is in docs/comparison.md.
    private static readonly string[] _measures = ["entryBoard", "breakpointBoard", "entryAngle"];

    [Fact]
    public void Compare_UnequalSpeedDriftAndGrossMisses_LimitsHoldTheTruthAsOftenAsTheySay()
    {
        var result = new ComparisonStudy(new("all of it", 12, 1.3, 0.5, 0.02, 0.05), 11).Run(1_000);

        foreach (var name in _measures)
        {
            Assert.InRange(result[name].Held, 0.93, 0.97);
            // Without adjustment they do not: the faster ball hooks less.
            Assert.True(result[name].HeldUnadjusted < 0.90, $"{name}: {result[name].HeldUnadjusted}");
        }

        Assert.True(result["entryBoard"].Truth > 3);
        Assert.True(result["breakpointBoard"].Claimed > 0.9);
    }

    [Fact]
    public void Compare_EqualBalls_AreCalledDifferentInAtMostFivePercent()
    {
        var result = new ComparisonStudy(new("equal balls", 12, 1, 0.5, 0.02, 0.05), 11).Run(1_000);

        Assert.True(result.AnyClaim <= 0.05, $"{result.AnyClaim}");
        Assert.True(result.AnySpreadClaim <= 0.05, $"{result.AnySpreadClaim}");
        Assert.All(result.Measures, one => Assert.Equal(0, one.Truth, 1e-9));
    }
}
