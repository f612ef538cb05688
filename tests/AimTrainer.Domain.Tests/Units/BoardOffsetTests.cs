using CsCheck;

namespace AimTrainer.Domain.Tests;

public sealed class BoardOffsetTests : UnitContract<BoardOffset>
{
    protected override IReadOnlyList<(string Name, Func<double, BoardOffset> Make, int? Decimals)> Factories =>
    [
        (nameof(BoardOffset.FromBoards), BoardOffset.FromBoards, 4),
    ];

    protected override double NumberOf(BoardOffset value) => value.Boards;

    [Theory]
    [InlineData(0.00005, 0)]
    [InlineData(0.00015, 0.0002)]
    [InlineData(-0.00015, -0.0002)]
    public void FromBoards_Tie_GoesToEven(double boards, double kept) => Assert.Equal(kept, BoardOffset.FromBoards(boards).Boards);

    [Fact]
    public void Arithmetic_AnyTwo_IsThatOfTheirNumbers()
    {
        var count = Gen.Int[-2_500_000, 2_500_000];
        Gen.Select(count, count).Sample(pair =>
        {
            var (left, right) = (BoardOffset.FromBoards(pair.Item1 / 10_000.0), BoardOffset.FromBoards(pair.Item2 / 10_000.0));
            return (left + right).ExactBoards == left.ExactBoards + right.ExactBoards
                && (left - right).ExactBoards == left.ExactBoards - right.ExactBoards
                && (-left).ExactBoards == -left.ExactBoards
                && left.Abs().ExactBoards == Math.Abs(left.ExactBoards);
        });
    }

    [Fact]
    public void Arithmetic_BeyondTheRange_Throws()
    {
        var most = BoardOffset.FromBoards(BoardOffset.Maximum);
        var least = BoardOffset.FromBoards(0.0001);
        Assert.Throws<ArgumentOutOfRangeException>(() => most + least);
        Assert.Throws<ArgumentOutOfRangeException>(() => -most - least);
        Assert.Throws<ArgumentOutOfRangeException>(() => most.Times(1.001m));
        Assert.Throws<ArgumentOutOfRangeException>(() => least.Times(decimal.MaxValue));
        Assert.Throws<ArgumentOutOfRangeException>(() => most.Times(decimal.MinValue));
    }

    [Fact]
    public void Times_AtTheRange_IsInclusive()
    {
        Assert.Equal(BoardOffset.Maximum, BoardOffset.FromBoards(0.0001).Times(5_000_000).Boards);
        Assert.Equal(BoardOffset.Zero, BoardOffset.Zero.Times(decimal.MaxValue));
    }

    [Theory]
    [InlineData(0.5, 2.5)]
    [InlineData(0.25, 1.25)]
    [InlineData(-1, -5)]
    [InlineData(0.33333333, 1.6667)]
    public void Times_Factor_RoundsOnce(double factor, double expected) =>
        Assert.Equal(BoardOffset.FromBoards(expected), BoardOffset.FromBoards(5).Times((decimal)factor));

    [Theory]
    [InlineData(0.5, 1)]
    [InlineData(1, 1)]
    [InlineData(5, 5)]
    [InlineData(9, 9)]
    [InlineData(9.0001, 9)]
    public void Clamp_Limits_AreInclusive(double boards, double expected) =>
        Assert.Equal(
            BoardOffset.FromBoards(expected),
            BoardOffset.FromBoards(boards).Clamp(BoardOffset.FromBoards(1), BoardOffset.FromBoards(9)));

    [Fact]
    public void Clamp_LimitsTheWrongWayRound_Throws() =>
        Assert.Throws<ArgumentException>(() => BoardOffset.Zero.Clamp(BoardOffset.FromBoards(2), BoardOffset.FromBoards(1)));
}
