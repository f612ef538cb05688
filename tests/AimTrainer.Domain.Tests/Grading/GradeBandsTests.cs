using CsCheck;

namespace AimTrainer.Domain.Tests;

public sealed class GradeBandsTests
{
    private static readonly Gen<BoardOffset> AnyWidth = Gen.Int[50, 2000].Select(count => BoardOffset.FromBoards(count / 100.0));

    private static readonly Gen<BoardOffset> AnyMiss = Gen.Int[-4400, 4400].Select(count => BoardOffset.FromBoards(count / 100.0));

    /// <summary>Bands of any shape that is allowed: shares and boards rise, points fall, the first few hold.</summary>
    private static readonly Gen<GradeBands> AnyBands =
        Gen.Select(Gen.Int[0, 100].Array[1, 6], Gen.Int[0, 300].Array[6], Gen.Int[0, 9].Array[6], Gen.Int[0, 6]).Select((shares, beyond, points, holding) =>
        {
            int[] share = [.. shares.Order()], more = [.. beyond.Order()], worth = [.. points.OrderDescending()];
            return new GradeBands(share.Select((hundredths, i) => new GradeBand(
                new Grade($"band {i}", worth[i], i < holding), hundredths / 100m, BoardOffset.FromBoards(more[i] / 100.0))).ToValueList());
        });

    [Theory]
    [InlineData(3, 0, "centre")]
    [InlineData(3, 0.75, "centre")]
    [InlineData(3, 0.76, "hit")]
    [InlineData(3, 1.5, "hit")]
    [InlineData(3, 1.51, "close")]
    [InlineData(3, 2.5, "close")]
    [InlineData(3, 2.51, "miss")]
    [InlineData(0.5, 0.12, "centre")]
    [InlineData(0.5, 0.13, "hit")]
    [InlineData(0.5, 0.25, "hit")]
    [InlineData(0.5, 0.26, "close")]
    [InlineData(0.5, 1.25, "close")]
    [InlineData(0.5, 1.26, "miss")]
    [InlineData(20, 5, "centre")]
    [InlineData(20, 5.01, "hit")]
    [InlineData(20, 10, "hit")]
    [InlineData(20, 10.01, "close")]
    [InlineData(20, 11, "close")]
    [InlineData(20, 11.01, "miss")]
    [InlineData(1.4, 0.35, "centre")]
    [InlineData(1.4, 0.7, "hit")]
    [InlineData(1.4, 1.7, "close")]
    public void GradeOf_DefaultBands_AreClosedToTheHundredth(double width, double miss, string grade)
    {
        Assert.Equal(grade, GradeBands.Default.GradeOf(BoardOffset.FromBoards(miss), BoardOffset.FromBoards(width)).Name);
        Assert.Equal(grade, GradeBands.Default.GradeOf(BoardOffset.FromBoards(-miss), BoardOffset.FromBoards(width)).Name);
    }

    [Fact]
    public void GradeOf_DefaultBandsAnyWidth_AgreeWithTheRuleInWholeNumbers() =>
        Gen.Select(AnyWidth, AnyMiss).Sample((width, miss) =>
        {
            var (wide, off) = ((int)Math.Round(width.Boards * 100), (int)Math.Abs(Math.Round(miss.Boards * 100)));
            var expected = off * 4 <= wide ? "centre" : off * 2 <= wide ? "hit" : (off - 100) * 2 <= wide ? "close" : "miss";
            return GradeBands.Default.GradeOf(miss, width).Name == expected;
        });

    [Fact]
    public void Default_Awards_AreThreeTwoOneNothing()
    {
        Assert.Equal(
            [new Grade("centre", 3, true), new Grade("hit", 2, true), new Grade("close", 1, false)],
            GradeBands.Default.Bands.Select(band => band.Award));
        Assert.Equal(new Grade("miss", 0, false), GradeBands.Miss);
    }

    [Fact]
    public void GradeOf_LargerMiss_NeverGetsMore() =>
        Gen.Select(AnyBands, AnyWidth, AnyMiss, AnyMiss).Sample((bands, width, one, other) =>
        {
            var (smaller, larger) = one.Abs() <= other.Abs() ? (one, other) : (other, one);
            var (near, far) = (bands.GradeOf(smaller, width), bands.GradeOf(larger, width));
            return near.Points >= far.Points && (near.Holds || !far.Holds);
        });

    [Fact]
    public void GradeOf_WiderTarget_NeverGetsFewer() =>
        Gen.Select(AnyBands, AnyMiss, AnyWidth, AnyWidth).Sample((bands, miss, one, other) =>
        {
            var (narrow, wide) = one <= other ? (one, other) : (other, one);
            var (less, more) = (bands.GradeOf(miss, narrow), bands.GradeOf(miss, wide));
            return more.Points >= less.Points && (more.Holds || !less.Holds);
        });

    [Fact]
    public void GradeBands_Empty_Throws() => Assert.Throws<ArgumentException>(() => new GradeBands([]));

    [Fact]
    public void GradeBands_LikeTheOneBefore_AreTaken() =>
        Assert.Equal(2, new GradeBands([Band("a", 1, true, 0.5m, 0), Band("b", 1, true, 0.5m, 0)]).Bands.Count);

    [Fact]
    public void GradeBands_OutOfOrder_Throw()
    {
        var first = Band("a", 2, false, 0.5m, 0.5);
        GradeBand[] wrong =
        [
            Band("b", 1, false, 0.49m, 0.5), Band("b", 1, false, 0.5m, 0.49), Band("b", 3, false, 0.5m, 0.5), Band("b", 1, true, 0.5m, 0.5),
        ];
        foreach (var second in wrong)
        {
            var thrown = Assert.Throws<ArgumentException>(() => new GradeBands([first, second]));
            Assert.Contains("band 2 must be wider than band 1", thrown.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void GradeBands_WorthLessThanAMiss_Throw()
    {
        GradeBand[] wrong = [Band("a", -1, false, 0.5m, 0), Band("a", 1, false, -0.1m, 0), Band("a", 1, false, 0.5m, -0.1)];
        foreach (var band in wrong)
        {
            Assert.Throws<ArgumentException>(() => new GradeBands([band]));
        }

        Assert.Throws<ArgumentException>(() => new GradeBands([Band("a", 1, true, 0.5m, 0), Band("b", -1, false, 1, 0)]));
    }

    [Theory]
    [InlineData("a", "a")]
    [InlineData("a", "miss")]
    public void GradeBands_NameTaken_Throws(string first, string second) =>
        Assert.Throws<ArgumentException>(() => new GradeBands([Band(first, 2, true, 0.25m, 0), Band(second, 1, true, 0.5m, 0)]));

    private static GradeBand Band(string name, int points, bool holds, decimal share, double beyond) =>
        new(new Grade(name, points, holds), share, BoardOffset.FromBoards(beyond));
}
