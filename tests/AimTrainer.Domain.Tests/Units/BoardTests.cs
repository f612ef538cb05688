using CsCheck;

namespace AimTrainer.Domain.Tests;

public sealed class BoardTests : UnitContract<Board>
{
    protected override IReadOnlyList<(string Name, Func<double, Board> Make, int? Decimals)> Factories =>
    [
        (nameof(Board.FromBoards), Board.FromBoards, 4),
        (nameof(Board.FromMeasurement), Board.FromMeasurement, 2),
    ];

    protected override double NumberOf(Board value) => value.Boards;

    [Theory]
    [InlineData(10.125, 10.12)]
    [InlineData(10.135, 10.14)]
    [InlineData(10.115, 10.12)]
    [InlineData(10.145, 10.14)]
    [InlineData(-3.125, -3.12)]
    [InlineData(-3.135, -3.14)]
    [InlineData(10.1250001, 10.13)]
    [InlineData(10.1349999, 10.13)]
    [InlineData(2.675, 2.68)]
    [InlineData(1.005, 1)]
    public void FromMeasurement_Tie_GoesToEvenOfTheWrittenDigits(double measured, double kept)
    {
        Assert.Equal(kept, Board.FromMeasurement(measured).Boards);
        Assert.Equal(Board.FromBoards(kept), Board.FromMeasurement(measured));
    }

    [Fact]
    public void Mirrored_AnyPlace_IsAsFarFromTheCentreOnTheOtherSide() =>
        Gen.Double[Board.Minimum, Board.Maximum].Sample(boards =>
        {
            var board = Board.FromBoards(boards);
            return board.Mirrored() - Board.LaneCentre == -(board - Board.LaneCentre) && board.Mirrored().Mirrored() == board;
        });

    [Fact]
    public void Mirrored_LandmarksOfTheLane_ChangePlaces()
    {
        Assert.Equal(Board.LaneCentre, Board.LaneCentre.Mirrored());
        Assert.Equal(Board.FarEdge, Board.NearEdge.Mirrored());
        Assert.Equal(Board.Maximum, Board.FromBoards(Board.Minimum).Mirrored().Boards);
    }

    [Fact]
    public void Minus_InsideOfTheOther_IsPositive()
    {
        Assert.Equal(BoardOffset.FromBoards(2.37), Board.FromBoards(12.37) - Board.FromBoards(10));
        Assert.Equal(BoardOffset.FromBoards(-2.37), Board.FromBoards(7.63) - Board.FromBoards(10));
    }

    [Fact]
    public void Plus_OffsetAndBack_IsTheSamePlace()
    {
        var offset = Gen.Double[-20, 20];
        Gen.Select(Gen.Double[0, 40], offset).Sample(pair =>
        {
            var (board, by) = (Board.FromBoards(pair.Item1), BoardOffset.FromBoards(pair.Item2));
            return (board + by) - by == board && (board + by) - board == by;
        });
    }

    [Fact]
    public void Plus_BeyondTheRange_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Board.FromBoards(Board.Maximum) + BoardOffset.FromBoards(0.0001));
        Assert.Throws<ArgumentOutOfRangeException>(() => Board.FromBoards(Board.Minimum) - BoardOffset.FromBoards(0.0001));
    }

    [Fact]
    public void ExactBoards_AnyMeasurement_HasItsDigits() => Assert.Equal(17.53m, Board.FromMeasurement(17.53).ExactBoards);
}
