using System.Text.Json;
using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class TrendFiguresTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(9)]
    public void Of_FewSessions_KnowsOnlyWhatTheyTell(int count)
    {
        var figures = TrendFigures.Of(Series.Of([.. Series.TwentyFour.Take(count)]), TrendScale.Logarithm, freedom: 14);
        Assert.Equal(count, figures.Count);
        Assert.Equal(count >= 2, figures.At95 is not null);
        Assert.Equal(count >= 5, figures.At95?.Low is not null);
        Assert.Equal(count >= 3, figures.Line?.SlopeError is not null);
        Assert.Equal(count >= 8, figures.Shift is not null);
        Assert.Equal((count >= 3, count >= 8), (figures.Detectable.TotalAt95 is not null, figures.Detectable.TotalByRule is not null));
        Assert.Equal(CurveName.TooFew, figures.Curves.Named);
        Assert.Null(figures.Ewma);
        Assert.Null(figures.NeighbourCorrelation);
        Assert.Equal(count >= 8 ? ImprovementVerdict.Improved : ImprovementVerdict.TooFew, figures.Rule!.Verdict);
        Assert.Equal(DetectableChange.PointSpread(14, 0), figures.Detectable.PointSpread!.Value, count < 4 ? 1e-12 : 1);
    }

    [Fact]
    public void Of_AllEqual_ClaimsNothing()
    {
        var figures = TrendFigures.Of(Series.Of([.. Enumerable.Repeat(1.5, 24)]), TrendScale.Logarithm);
        Assert.Equal((ImprovementVerdict.NotShown, CurveName.Level, (double?)null), (figures.Rule!.Verdict, figures.Curves.Named, figures.MannKendall.P));
        Assert.False(figures.Shift!.Found);
        Assert.Null(figures.NeighbourCorrelation);
        Assert.Null(figures.Ewma);
    }

    [Fact]
    public void Of_Bias_NeverSaysImproved()
    {
        var figures = TrendFigures.Of(Series.Of([.. Enumerable.Range(0, 24).Select(i => 2 - (0.2 * i))]), TrendScale.AsGiven);
        Assert.Null(figures.Rule);
        Assert.Equal(-0.2, figures.At95!.Slope, 1e-12);
    }

    [Fact]
    public void Of_SpreadOfNothing_Throws() =>
        Assert.Contains("session 2", Assert.Throws<ArgumentException>(() => TrendFigures.Of(Series.Of([1, 0]), TrendScale.Logarithm)).Message, StringComparison.Ordinal);

    [Fact]
    public void NeighbourCorrelation_SessionsThatResembleTheirNeighbours_IsSeen()
    {
        var (noise, last) = (new Normal(2), 0.0);
        var alike = Series.Of([.. Enumerable.Range(0, 40).Select(_ => Math.Exp(last = (0.8 * last) + (0.1 * noise.Next())))]);
        var figures = TrendFigures.Of(alike, TrendScale.Logarithm);
        Assert.True(figures.NeighbourCorrelation > figures.NeighboursAlike);
        var apart = TrendFigures.Of(Series.Of([.. Enumerable.Range(0, 40).Select(_ => Math.Exp(0.1 * noise.Next()))]), TrendScale.Logarithm);
        Assert.True(Math.Abs(apart.NeighbourCorrelation!.Value) < apart.NeighboursAlike!.Value);
    }

    [Fact]
    public void Of_AnySeries_CanBeWrittenAsJson() =>
        // JSON has no infinity and no not-a-number: few values, many ties, huge and tiny ones give none.
        Gen.Select(Gen.Int[0, 3].Array[0, 30], Gen.Int[-6, 9].Select(power => Math.Pow(10, power)), Gen.Int[1, 3], Gen.Bool).Sample((values, factor, step, spread) =>
        {
            var points = values.Select((value, i) => new TrendPoint(i * step, (value + (spread ? 1 : 0)) * factor)).ToArray();
            var json = JsonSerializer.Serialize(TrendFigures.Of(points, spread ? TrendScale.Logarithm : TrendScale.AsGiven), DomainJson.Options);
            Assert.Contains($"\"count\":{points.Length}", json, StringComparison.Ordinal);
        });
}
