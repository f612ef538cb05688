using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

public sealed class TestRecordTests
{
    private static readonly double[] Spread = [-1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1];

    [Fact]
    public void Of_Nothing_IsEmpty()
    {
        var record = TestRecord.Of([]);
        Assert.Equal((0, 0, 1), (record.Visits.Count, record.Series.Count, record.Kinds));
    }

    [Fact]
    public void Of_OneTestBlock_IsWhatAHandFinds()
    {
        // By hand: sixteen misses of 0.5 ± 1: mean 0.5, Σ(e - mean)² = 16, variable error 1, spread √(16/15), correction 1/30.
        var record = TestRecord.Of([Practice.Block(0, 0, BlockKind.Test, 13.5, [.. Spread.Select(miss => miss + 0.5)])]);
        var point = Assert.Single(Assert.Single(record.Series).Points);
        Assert.Equal((16, 1, 15, 0), (point.Graded, point.Targets, point.Freedom, point.TrainingBefore));
        Assert.Equal(0.5, point.BiasBoards, 1e-12);
        Assert.Equal(1, point.VariableErrorBoards, 1e-12);
        Assert.Equal(Math.Sqrt(16.0 / 15), point.SpreadBoards, 1e-12);
        Assert.Equal(Math.Log(Math.Sqrt(16.0 / 15)) + (1 / 30.0), point.LogSpread, 1e-12);
    }

    [Fact]
    public void Of_TrainingOnly_HasVisitsAndNoSeries()
    {
        var record = TestRecord.Of([Practice.Block(0, 0, BlockKind.Training, 15, Spread), Practice.Block(1, 0, null, 15, Spread)]);
        Assert.Equal((2, 0), (record.Visits.Count, record.Series.Count));
    }

    [Fact]
    public void Of_TwoTargetsWithOtherBiases_DoesNotTakeTheDifferenceForSpread()
    {
        var record = TestRecord.Of(
        [
            Practice.Block(0, 0, BlockKind.Test, 13, [.. Spread.Select(miss => miss + 5)], target: "one"),
            Practice.Block(0, 1, BlockKind.Test, 14, [.. Spread.Select(miss => miss - 5)], target: "two"),
        ]);
        var point = Assert.Single(Assert.Single(record.Series).Points);
        Assert.Equal((32, 2, 0.0, 1.0), (point.Graded, point.Targets, point.BiasBoards, point.VariableErrorBoards));
    }

    [Fact]
    public void Of_TwoBallsAtOneTarget_CountTheirDifferenceAsSpread()
    {
        var record = TestRecord.Of(
        [
            Practice.Block(0, 0, BlockKind.Test, 13, [2, 2, 2, 2, 2, 2, 2, 2], ball: "one"),
            Practice.Block(0, 0, BlockKind.Test, 13, [-2, -2, -2, -2, -2, -2, -2, -2], ball: "two"),
        ]);
        Assert.Equal(2, Assert.Single(Assert.Single(record.Series).Points).VariableErrorBoards, 1e-12);
    }

    [Fact]
    public void Of_TestsAtOtherDistances_AreSeriesOfTheirOwn()
    {
        var record = TestRecord.Of(
        [
            Practice.Block(0, 0, BlockKind.Test, 12.5, Spread), Practice.Block(0, 1, BlockKind.Test, 40.3, Spread), Practice.Block(7, 0, BlockKind.Test, 16, Spread),
        ]);
        Assert.Equal(["at the arrows", "at 40 ft"], record.Series.Select(series => series.Place.ToString()));
        Assert.Equal([2, 1], record.Series.Select(series => series.Points.Count));
    }

    [Fact]
    public void Of_SessionsWithinTwelveHours_AreOneVisit()
    {
        var record = TestRecord.Of(
        [
            Practice.Block(0, 0, BlockKind.Training, 13, Spread, session: "warm-up"),
            Practice.Block(0, 0, BlockKind.Test, 13, Spread, session: "test", hours: 1),
            Practice.Block(0, 0, BlockKind.Test, 13, Spread, session: "next", hours: 12),
        ]);
        Assert.Equal([2, 1], record.Visits.Select(visit => visit.Sessions));
        Assert.Equal([16, 0], Assert.Single(record.Series).Points.Select(point => point.TrainingBefore));
    }

    [Fact]
    public void Of_FewerThanFifteenShots_AreShownAndNotUsed()
    {
        var series = Assert.Single(TestRecord.Of([Practice.Block(0, 0, BlockKind.Test, 13, Spread[..14])]).Series);
        Assert.Equal((0, 14, (double?)null), (series.Points.Count, Assert.Single(series.TooFewShots).Graded, series.Freedom));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Of_TestWithoutTwoKnownCrossings_HasNoPoint(int graded)
    {
        var series = Assert.Single(TestRecord.Of([Practice.Block(0, 0, BlockKind.Test, 13, Spread[..graded]) with { Shots = 20 }]).Series);
        Assert.Equal((0, 0), (series.Points.Count, series.TooFewShots.Count));
    }

    [Theory]
    [InlineData(1.0, 16, 1.0)]
    [InlineData(1.25, 0, 0.01)]
    public void Of_AllAlike_IsAtTheResolutionAndHasALogarithm(double miss, int whole, double step)
    {
        var block = Practice.Block(0, 0, BlockKind.Test, 13, [.. Enumerable.Repeat(miss, 16)]) with { WholeBoards = whole };
        var point = Assert.Single(Assert.Single(TestRecord.Of([block]).Series).Points);
        Assert.True(point.AtResolution);
        Assert.Equal(Math.Log(step / Math.Sqrt(12)) + (1 / 30.0), point.LogSpread, 1e-12);
    }

    [Fact]
    public void LogSpread_FewOrManyShots_HasTheSameMean()
    {
        // 4000 sessions each of 15 and of 60 shots by one bowler: without the correction the short ones would look steadier by 0.027.
        double Mean(int shots)
        {
            var noise = new Normal((ulong)shots);
            return Enumerable.Range(0, 4000).Average(_ =>
                Assert.Single(Assert.Single(TestRecord.Of([Practice.Block(0, 0, BlockKind.Test, 13, Practice.Misses(noise, shots, 1.5))]).Series).Points).LogSpread);
        }

        Assert.Equal(Math.Log(1.5), Mean(15), 0.01);
        Assert.Equal(Math.Log(1.5), Mean(60), 0.01);
    }

    [Fact]
    public void Retention_StartAgainstTheEndBefore_FindsWhatWasPutIn()
    {
        // At the end of each visit the spread is 1, at the start of the next 1.25: log change 0.223.
        var blocks = new List<PracticeBlock>();
        for (var week = 0; week < 20; week++)
        {
            var noise = new Normal((ulong)week + 900);
            blocks.Add(Practice.Block(week * 7, 0, BlockKind.Test, 13, Practice.Misses(noise, 30, 1.25, 0.4)));
            blocks.Add(Practice.Block(week * 7, 1, BlockKind.Training, 13, Practice.Misses(noise, 40, 1)));
            blocks.Add(Practice.Block(week * 7, 2, BlockKind.Test, 13, Practice.Misses(noise, 30, 1)));
        }

        var series = Assert.Single(TestRecord.Of(blocks).Series);
        Assert.Equal((20, 19), (series.Points.Count, series.Retention.Pairs.Count));
        Assert.All(series.Retention.Pairs, pair => Assert.Equal(7, pair.Days, 1e-9));
        var limits = series.Retention.LogChangeLimits!.Value;
        Assert.InRange(Math.Log(1.25), limits.Low, limits.High);
        Assert.True(limits.Low > 0);
        Assert.InRange(0.4, series.Retention.BiasChangeLimits!.Value.Low, series.Retention.BiasChangeLimits!.Value.High);
    }

    [Fact]
    public void Retention_OneTestAVisit_HasNoPairs()
    {
        var retention = Assert.Single(TestRecord.Of(Practice.Unchanging(1, 10, 15, 13)).Series).Retention;
        Assert.Equal((0, (double?)null, (TrendLimits?)null), (retention.Pairs.Count, retention.MeanLogChange, retention.LogChangeLimits));
    }

    [Fact]
    public void Retention_VisitOfTrainingBetween_BreaksThePair()
    {
        List<PracticeBlock> blocks =
        [
            Practice.Block(0, 0, BlockKind.Test, 13, Spread), Practice.Block(0, 1, BlockKind.Training, 13, Spread), Practice.Block(0, 2, BlockKind.Test, 13, Spread),
            Practice.Block(7, 0, BlockKind.Test, 13, Spread),
        ];
        Assert.Single(Assert.Single(TestRecord.Of(blocks).Series).Retention.Pairs);
        Assert.Empty(Assert.Single(TestRecord.Of([.. blocks, Practice.Block(3, 0, BlockKind.Training, 13, Spread)]).Series).Retention.Pairs);
    }
}
