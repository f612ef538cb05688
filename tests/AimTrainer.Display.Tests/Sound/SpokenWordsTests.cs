using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

public sealed class SpokenWordsTests
{
    [Theory]
    [InlineData(1.5, Hand.Right, "1.5 left")]
    [InlineData(1.5, Hand.Left, "1.5 right")]
    [InlineData(-2.0, Hand.Right, "2 right")]
    [InlineData(-2.0, Hand.Left, "2 left")]
    [InlineData(0.25, Hand.Right, "0.2 left")]
    [InlineData(0.35, Hand.Right, "0.4 left")]
    [InlineData(0.05, Hand.Right, "centre")]
    [InlineData(0.0, Hand.Left, "centre")]
    [InlineData(-12.34, Hand.Right, "12.3 right")]
    public void For_MissTold_BoardsAndSide(double miss, Hand hand, string words) =>
        Assert.Equal(words, SpokenWords.For(new Told([new ToldShot(1, true, [Target(miss)])]), hand));

    [Fact]
    public void For_Line_EachTargetNearestFirst() =>
        Assert.Equal("1.5 left, 0.2 right", SpokenWords.For(new Told([new ToldShot(1, false, [Target(1.5), Target(-0.2)])]), Hand.Right));

    [Fact]
    public void For_SeveralShots_HowManyWereHeld() =>
        Assert.Equal("1 of 3 held", SpokenWords.For(new Told([new ToldShot(1, true, []), new ToldShot(2, false, []), new ToldShot(3, null, [])]), Hand.Right));

    [Fact]
    public void For_NotMeasured_SaysSo() =>
        Assert.Equal("not measured", SpokenWords.For(new Told([new ToldShot(1, null, [new ToldTarget("spot", null, null)])]), Hand.Right));

    [Fact]
    public void For_NoNumberTold_Nothing()
    {
        Assert.Null(SpokenWords.For(Told.Nothing, Hand.Right));
        Assert.Null(SpokenWords.For(new Told([new ToldShot(1, true, [])]), Hand.Right));
        Assert.Null(SpokenWords.For(new Told([new ToldShot(1, false, [new ToldTarget("spot", 1, null)])]), Hand.Right));
    }

    private static ToldTarget Target(double miss) => new("x; rm -rf / \"$(y)\"", Math.Sign(miss), BoardOffset.FromBoards(miss));
}
