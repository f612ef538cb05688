namespace AimTrainer.Domain.Tests;

public class FixedSizingTests
{
    [Fact]
    public void After_AnyShot_KeepsTheWidth() => Assert.Equal([4, 4, 4, 4], new FixedSizing().Widths(4, "HMM"));

    [Fact]
    public void Start_NoWidth_ThrowsBecauseItCannotChoose() => Assert.Throws<ArgumentException>(() => new FixedSizing().Start(null));

    [Fact]
    public void SetByHand_OutsideTheLimits_TakesTheLimit()
    {
        var rule = new FixedSizing();
        Assert.Equal(9, rule.SetByHand(rule.Start(Sequence.Boards(4)), Sequence.Boards(12)).Width.Boards);
    }

    [Fact]
    public void After_AnotherRulesState_SaysWhatIsWrong()
    {
        var other = new WeightedSizing(0.75, 0.1).Start(null);
        var error = Assert.Throws<ArgumentException>(() => new FixedSizing().After(other, new SizedShot(true, BoardOffset.Zero)));
        Assert.Contains("WeightedState", error.Message, StringComparison.Ordinal);
    }
}
