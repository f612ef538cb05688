namespace AimTrainer.Domain.Tests;

public class WeightedSizingTests
{
    // Source: reference statistics-checks.json, staircase.weighted75 (deterministic trace), tolerance 1e-9.
    [Fact]
    public void After_ThreeToOne_FollowsTheTrace()
    {
        double[] levels =
        [
            8.0, 7.550994501453547, 7.127189745122713, 6.727171322029715, 7.999999999999998, 7.550994501453546, 7.1271897451227115,
            6.727171322029713, 6.349604207872795, 7.550994501453544, 8.979696386474979, 8.475704754874357, 7.999999999999995, 9.513656920021761,
            8.979696386474977, 8.475704754874355, 7.999999999999993, 7.550994501453541, 7.127189745122708, 6.72717132202971, 7.999999999999992,
        ];
        var rule = new WeightedSizing(0.75, 1.0 / 12) { Widest = Sequence.Boards(20) };
        var states = rule.States(rule.Start(Sequence.Boards(8)), "HHHMHHHHMMHHMHHHHHHM").Cast<WeightedState>().ToList();
        Assert.Equal(levels.Length, states.Count);
        Assert.All(states.Zip(levels), pair =>
        {
            Assert.Equal(pair.Second, Math.Pow(2, pair.First.Log2Boards), 1e-9);
            Assert.Equal(pair.Second, pair.First.Width.Boards, 0.005);
        });
    }

    // Source: reference statistics-checks.json, weighted.ratio (Kaernbach 1991), tolerance 1e-9.
    [Theory]
    [InlineData(0.5, 1.0)]
    [InlineData(0.70710678, 2.4142135485416842)]
    [InlineData(0.75, 3.0)]
    [InlineData(0.8, 4.000000000000001)]
    [InlineData(0.8413447, 5.302972544881889)]
    [InlineData(0.85, 5.666666666666666)]
    [InlineData(0.9, 9.000000000000002)]
    public void StepRatio_Published_Matches(double goal, double expected)
    {
        Assert.Equal(expected, WeightedSizing.StepRatio(goal), 1e-9);
        Assert.Equal(expected, new WeightedSizing(goal, 0.25).WiderOctaves / 0.25, 1e-9);
    }

    [Fact]
    public void After_HeldAtALimit_ComesBackAtOnce() =>
        Assert.Equal([1, 1, 1, 1, 8], new WeightedSizing(0.75, 1).Widths(1, "HHHM"));

    [Fact]
    public void Start_NoWidth_IsTheMiddleOfTheLimits() => Assert.Equal(3, new WeightedSizing(0.75, 0.1).Start(null).Width.Boards);

    [Fact]
    public void SetByHand_AWidth_IsWhereTheStepsGoOn()
    {
        var rule = new WeightedSizing(0.75, 1);
        var set = rule.SetByHand(rule.Start(null), Sequence.Boards(8));
        Assert.Equal(8, set.Width.Boards);
        Assert.Equal(4, rule.After(set, new SizedShot(true, BoardOffset.Zero)).Width.Boards);
    }

    [Theory]
    [InlineData(0, 0.1)]
    [InlineData(1, 0.1)]
    [InlineData(double.NaN, 0.1)]
    [InlineData(0.75, 0)]
    [InlineData(0.75, double.PositiveInfinity)]
    public void Constructor_OutsideItsRange_Throws(double goal, double octaves) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeightedSizing(goal, octaves));
}
