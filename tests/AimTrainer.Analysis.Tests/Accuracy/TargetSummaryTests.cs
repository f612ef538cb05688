using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class TargetSummaryTests
{
    [Fact]
    public void Result_NoShot_KnowsNothing() =>
        Assert.Equal(
            new TargetSummary("arrows", 0, 0, 0, null, null, null, null, null, null, null, null, null, null),
            new TargetSummaryAccumulator("arrows").Result);

    [Fact]
    public void Result_NothingMeasured_CountsTheShotsOnly() =>
        Assert.Equal(
            new TargetSummary("arrows", 2, 0, 0, null, null, null, null, null, null, null, null, null, null),
            Of(null, null));

    [Fact]
    public void Result_OneGraded_HasNoScatterAndNoSpread()
    {
        var summary = Of(11, null);
        Assert.Equal((2, 1, 1), (summary.Shots, summary.Graded, summary.Hits));
        Assert.Equal(1, summary.HitRate);
        // Source: Wilson 1927, from memory, by hand: 1 of 1 has the lower limit 1 / (1 + z²), z = 1.959963984540054.
        Assert.Equal(1 / (1 + (1.959963984540054 * 1.959963984540054)), summary.HitRateLow!.Value, 1e-9);
        Assert.Equal(1, summary.HitRateHigh);
        Assert.Equal(1, summary.ConstantErrorBoards);
        Assert.Equal(1, summary.AbsoluteErrorBoards);
        Assert.Equal(1, summary.TotalErrorBoards);
        Assert.Null(summary.VariableErrorBoards);
        Assert.Null(summary.SpreadBoards);
        Assert.Equal(Board.FromBoards(11), summary.MinBoard);
        Assert.Equal(Board.FromBoards(11), summary.MaxBoard);
    }

    [Fact]
    public void Result_HandExample_IsThatOfItsMisses()
    {
        // Source: err1d.hand (see ErrorMeasuresTests); of 9, 11, 12, 10, 13 on a target from 8.5 to 11.5 three are hits.
        var summary = Of(9, 11, null, 12, 10, 13);
        Assert.Equal((6, 5, 3), (summary.Shots, summary.Graded, summary.Hits));
        Assert.Equal(0.6, summary.HitRate);
        Assert.Equal(1, summary.ConstantErrorBoards!.Value, 1e-9);
        Assert.Equal(Math.Sqrt(2), summary.VariableErrorBoards!.Value, 1e-9);
        Assert.Equal(1.4, summary.AbsoluteErrorBoards!.Value, 1e-9);
        Assert.Equal(Math.Sqrt(3), summary.TotalErrorBoards!.Value, 1e-9);
        Assert.Equal(4, summary.SpreadBoards);
        Assert.Equal((Board.FromBoards(9), Board.FromBoards(13)), (summary.MinBoard, summary.MaxBoard));
    }

    [Fact]
    public void Result_PaperTestOfTenShots_SpreadIsOfTheBallsCentre()
    {
        // Source: ten shots over one mark at the arrows, US Bowler July 2012 (content.yudu.com/A1xc7b/USB0712): the whole spread is
        // the score. Centres from 9.0 to 11.0 are 2 boards apart.
        Assert.Equal(2, Of(9.6, 10.2, 9, 10.4, 10, 9.9, 11, 10.1, 9.4, 10.6).SpreadBoards);
    }

    [Fact]
    public void Result_AnyShots_AgreesWithALoopOverThem() =>
        Gen.Select(Gen.Bool, Gen.Int[-400, 4400]).Array[1, 40].Sample(shots =>
        {
            var boards = shots.Where(shot => shot.Item1).Select(shot => shot.Item2 / 100.0).ToList();
            var summary = Of([.. shots.Select(shot => shot.Item1 ? shot.Item2 / 100.0 : (double?)null)]);
            Assert.Equal(shots.Length, summary.Shots);
            Assert.Equal(boards.Count, summary.Graded);
            Assert.Equal(boards.Count(board => board is >= 8.5 and <= 11.5), summary.Hits);
            Assert.Equal(boards.Count == 0 ? null : boards.Min(), summary.MinBoard?.Boards);
            Assert.Equal(boards.Count == 0 ? null : boards.Max(), summary.MaxBoard?.Boards);
            Assert.Equal(boards.Count < 2 ? null : Math.Round(boards.Max() - boards.Min(), 2), summary.SpreadBoards);
        });

    [Fact]
    public void Add_OtherTarget_Throws() =>
        Assert.Throws<ArgumentException>(() => new TargetSummaryAccumulator("arrows").Add(SampleResult.At(10, "downlane")));

    private static TargetSummary Of(params double?[] boards)
    {
        var summary = new TargetSummaryAccumulator("arrows");
        foreach (var board in boards)
        {
            summary.Add(SampleResult.At(board));
        }

        return summary.Result;
    }
}
