namespace AimTrainer.Domain.Tests;

public class SizingLimitsTests
{
    [Theory]
    [InlineData(0.4)]
    [InlineData(21)]
    public void Limits_NoTargetIsThatWide_Throw(double boards)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new FixedSizing { Narrowest = Sequence.Boards(boards) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new FixedSizing { Widest = Sequence.Boards(boards) });
    }

    [Fact]
    public void Start_LimitsTheWrongWayRound_SaysBoth()
    {
        var rule = new WeightedSizing(0.75, 0.1) { Narrowest = Sequence.Boards(6), Widest = Sequence.Boards(5) };
        var error = Assert.Throws<ArgumentException>(() => rule.Start(null));
        Assert.Contains("6", error.Message, StringComparison.Ordinal);
        Assert.Contains("5", error.Message, StringComparison.Ordinal);
    }
}
