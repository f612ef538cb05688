namespace AimTrainer.Analysis.Tests;

public sealed class BlockSummaryTests
{
    [Fact]
    public void Result_NoShot_IsEmpty() => Assert.Equal(new BlockSummary([], 0, 0, 0), new BlockSummaryAccumulator().Result);

    [Fact]
    public void Result_SeveralTargets_AreInTheOrderFirstSeen()
    {
        var block = new BlockSummaryAccumulator();
        block.Add([SampleResult.At(10, "second arrow"), SampleResult.At(11.5, "downlane")]);
        block.Add([SampleResult.At(12, "first arrow")]);
        block.Add([SampleResult.At(null, "second arrow"), SampleResult.At(20, "downlane")]);

        var summary = block.Result;
        Assert.Equal(["second arrow", "downlane", "first arrow"], summary.PerTarget.Select(target => target.Name));
        Assert.Equal([2, 2, 1], summary.PerTarget.Select(target => target.Shots));
        Assert.Equal([1, 2, 1], summary.PerTarget.Select(target => target.Graded));
        Assert.Equal([1, 1, 0], summary.PerTarget.Select(target => target.Hits));
        Assert.Equal(3 + 2 + 1, summary.Points);
        Assert.Equal((1, 2), (summary.Held, summary.Known)); // Of the third throw one crossing was not measured.
    }

    [Fact]
    public void Result_TakenTwice_IsTheSameAndStays()
    {
        var block = new BlockSummaryAccumulator();
        block.Add([SampleResult.At(10)]);
        var early = block.Result;
        Assert.Equal(early, block.Result);
        block.Add([SampleResult.At(12)]);
        Assert.Equal(1, early.PerTarget[0].Shots);
        Assert.NotEqual(early, block.Result);
    }
}
