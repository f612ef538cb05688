using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

public sealed class JoinedStretchesTests
{
    [Fact]
    public void Of_ThreeProjectorsInAnyOrder_LightAddsUpToOneEverywhere()
    {
        List<LaneStretch> stretches = [Stretch(40, 60), Stretch(0, 22), Stretch(18, 45)];
        var join = JoinedStretches.Of(stretches);
        Assert.Empty(join.Problems);
        for (var feet = 0.05; feet < 60; feet += 0.1)
        {
            Assert.Equal(1, join.Stretches.AsEnumerable().Sum(stretch => stretch.WeightAt(Feet.FromFeet(feet))), 9);
        }

        Assert.Equal(new LaneStretch(Feet.FromFeet(18), Feet.FromFeet(45), Feet.FromFeet(4), Feet.FromFeet(5)), join.Stretches[2]);
    }

    [Theory]
    [InlineData(0, 20, 25, 60, "nobody draws the lane from 20 to 25 ft")]
    [InlineData(0, 60, 20, 40, "lie one within the other")]
    [InlineData(0, 60, 0, 60, "lie one within the other")]
    [InlineData(0, 20, 20, 10, "has no length")]
    public void Of_StretchesThatDoNotJoin_SaysWhy(double from, double to, double from2, double to2, string words)
    {
        var join = JoinedStretches.Of([Stretch(from, to), Stretch(from2, to2)]);
        Assert.Empty(join.Stretches);
        Assert.Contains(join.Problems, problem => problem.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_ThreeAtOnePlace_SaysWhere()
    {
        var join = JoinedStretches.Of([Stretch(0, 30), Stretch(10, 50), Stretch(25, 60)]);
        Assert.Equal(["three projectors share the lane from 25 to 30 ft: at most two may"], join.Problems);
    }

    private static LaneStretch Stretch(double from, double to) => new(Feet.FromFeet(from), Feet.FromFeet(to), default, default);
}
