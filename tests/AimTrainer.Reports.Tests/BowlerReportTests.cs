using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports.Tests;

public sealed class BowlerReportTests
{
    [Theory]
    [InlineData(0, null, null)]
    [InlineData(1, 0.5, null)]
    [InlineData(2, 0.5, -5.853102368216048)]
    [InlineData(3, 0.5, -0.7420688)]
    [InlineData(9, 0.5, 0.1671567)]
    public void Build_FewShots_SaysNothingOfTheBowler(int count, double? mean, double? low)
    {
        // By hand: misses 0, 1, 0.5, 0, 1, 0.5, ...; of 2 shots t(0.975; 1) = 12.7062 times 0.5; of 3 t(2) = 4.30265 times 0.5 / √3; of 9
        // t(8) = 2.306004 times 0.433013 / 3 (Student's table).
        double[] misses = [0, 1, 0.5];
        var made = count == 1 ? new MadeBowler().AtTheArrows(10.5)
            : count == 0 ? new MadeBowler() : new MadeBowler().AtTheArrows([.. Enumerable.Range(0, count).Select(i => (double?)(10 + misses[i % 3]))]);
        var report = made.Report();
        var target = report.Lane.Main;

        Assert.Equal(count, report.Work.Shots);
        Assert.Equal(count, target?.Measured ?? 0);
        if (mean is { } middle)
        {
            Assert.Equal(middle, target!.MeanMissBoards.Value!.Value, 1e-12);
            Assert.Equal(low is null, target.MeanMissBoards.Low is null);
            Assert.Equal(low ?? 0, target.MeanMissBoards.Low ?? 0, 1e-4);
        }

        Assert.All(report.Sentences, sentence => Assert.Null(sentence.Figure.Value));
        Assert.All(report.Sentences, sentence => Assert.NotNull(sentence.Figure.Why));
        Assert.Equal(WorkOnRule.Measure, report.WorkOn.Rule);
        Assert.Equal(count < LaneEllipse.Fewest, target?.Ellipse.LowBoard is null);
        Assert.NotEmpty(report.Missing);
    }

    [Fact]
    public void Ellipse_NineShots_IsThePredictionInterval()
    {
        // By hand: mean 10.5, s = 0.433013, t(0.975; 8) = 2.306004 (Student's table): 10.5 ± 2.306004 · 0.433013 · √(10/9) = ± 1.052543.
        var ellipse = new MadeBowler().AtTheArrows(10, 11, 10.5, 10, 11, 10.5, 10, 11, 10.5).Report().Lane.Main!.Ellipse;
        Assert.Equal(10.5 - 1.052543, ellipse.LowBoard!.Value, 1e-5);
        Assert.Equal(10.5 + 1.052543, ellipse.HighBoard!.Value, 1e-5);
    }

    [Fact]
    public void Ellipse_OfManySets_HoldsTheNextShotAsOftenAsItSays()
    {
        var inside = 0;
        const int Sets = 4_000;
        for (var set = 0; set < Sets; set++)
        {
            double Shot(int i) => StandardNormal.Quantile((0.999998 * SeededRandom.Unit((ulong)set, (ulong)i)) + 1e-6);
            double[] shots = [.. Enumerable.Range(0, 8).Select(Shot)];
            var mean = shots.Average();
            var ellipse = LaneEllipse.Of(mean, Math.Sqrt(shots.Sum(shot => (shot - mean) * (shot - mean)) / 7), 8);
            inside += Shot(8) is var next && next >= ellipse.LowBoard && next <= ellipse.HighBoard ? 1 : 0;
        }

        // 95 % of 4000, and four standard errors of that (0.0034) to either side.
        Assert.InRange(inside / (double)Sets, 0.9362, 0.9638);
    }

    [Fact]
    public void Build_AllTheSame_HasNoLimitsAndNoEllipse()
    {
        var report = new MadeBowler().AtTheArrows([.. Enumerable.Repeat((double?)11, 20)]).Report();
        var target = report.Lane.Main!;
        Assert.Equal((1.0, null, EstimateLimits.NoScatter), (target.MeanMissBoards.Value!.Value, target.MeanMissBoards.Low, target.Ellipse.Why));
        Assert.Contains("All 20 readings at board 10 at the arrows are the same, 1.00 left", report.Sentences[0].Text, StringComparison.Ordinal);
        Assert.Equal(0, report.TenShots.Sessions[0].SpreadBoards);
        Assert.Equal(WorkOnRule.Test, report.WorkOn.Rule);
    }

    [Fact]
    public void Build_AllMissing_IsUnknownWithReasons()
    {
        var report = new MadeBowler().AtTheArrows([.. Enumerable.Repeat((double?)null, 20)]).Report();
        var target = report.Lane.Main!;
        Assert.Equal((20, 0, null), (target.Shots, target.Measured, target.MeanMissBoards.Value));
        Assert.Equal(EstimateLimits.NoShot, target.MeanMissBoards.Why);
        Assert.Contains("No crossing was measured", report.Missing[0], StringComparison.Ordinal);
        Assert.All(report.Sentences, sentence => Assert.Contains("not known", sentence.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Build_LeftHander_SameBoardsOtherSide()
    {
        static BowlerReport Of(Hand hand) => new MadeBowler(hand: hand).Weeks(3, _ => 1, 1.5).Report();
        var (left, right) = (Of(Hand.Left), Of(Hand.Right));
        Assert.Equal(right.Lane.Main!.MeanMissBoards, left.Lane.Main!.MeanMissBoards);
        Assert.Contains("boards to the left", right.Sentences[0].Text, StringComparison.Ordinal);
        Assert.Contains("boards to the right", left.Sentences[0].Text, StringComparison.Ordinal);
        Assert.Contains("too far right", left.WorkOn.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_Weeks_TakesTrendFromTestsOnlyAndImprovedFromTheRule()
    {
        var report = new MadeBowler().Weeks(16, week => 2.5 * Math.Exp(-0.08 * week)).Report();
        Assert.Equal(("at the arrows", 16), (report.Trend.Place, report.Trend.Points.Count));
        Assert.Equal(ImprovementVerdict.Improved, report.Trend.Verdict);
        Assert.StartsWith("Improved: over 16 sessions", report.Sentences[2].Text, StringComparison.Ordinal);
        Assert.All(report.Trend.Points, point => Assert.True(point.TrendLowBoards < point.TrendBoards && point.TrendBoards < point.TrendHighBoards));
        Assert.All(report.Trend.Points, point => Assert.Equal(20, point.Shots));
    }

    [Fact]
    public void Build_ManyShots_TakesTheNewestAndSaysSo()
    {
        var report = new MadeBowler().Weeks(16, _ => 1).Report();
        Assert.Equal((LanePicture.MostShots, 620), (report.Lane.Shots, report.Lane.AllShots));
        Assert.Contains(report.Notes, note => note.Contains("the newest 300 of 620 shots", StringComparison.Ordinal));
    }

    [Fact]
    public void Build_Line_SplitsAsTheInventedBowlerThrows()
    {
        // The invented bowler's angle scatters by 0.05 boards a foot: 2 boards at 40 ft, beside 0.4 of the laydown and 0.5 of the ball.
        var report = new MadeBowler().Weeks(8, _ => 1).Report();
        Assert.Equal(("15@15 to 8@40", 120), (report.Causes.Line, report.Causes.Split + report.Causes.GrossSetAside));
        Assert.Equal(4 / 4.41, report.Causes.Shares!.AngleShare.Value!.Value, 0.05);
        Assert.Contains("comes from the angle", report.Sentences[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_TenShots_AreTheLatestOfEachSession()
    {
        double?[] boards = [5, 15, 10, 10, 10, 10, 10, 10, 10, 10, 9, 11.5, 10, 10, 10, 10, 10, 10, 10, 10, 3];
        var tens = new MadeBowler().AtTheArrows(boards).AtTheArrows(boards[..9]).Report().TenShots;
        Assert.Equal([2.5], tens.Sessions.Select(ten => ten.SpreadBoards));
        Assert.Equal(5, tens.Bands.Count);
        Assert.Contains(tens.Caveats, caveat => caveat.Contains("a reference, not a verdict", StringComparison.Ordinal));
    }

    [Fact]
    public void Build_OtherHandCutOffAndPeriod_AreSaid()
    {
        var notes = new MadeBowler { OtherHand = 2, CutOff = true }.AtTheArrows(10).Report(new PracticeFilter("Ann Lee", MadeBowler.Start)).Notes;
        Assert.Contains(notes, note => note.StartsWith("2 sessions with the other hand left out", StringComparison.Ordinal));
        Assert.Contains(notes, note => note.StartsWith("There is more practice", StringComparison.Ordinal));
        Assert.Contains(notes, note => note.StartsWith("The period was chosen", StringComparison.Ordinal));
    }
}
