namespace AimTrainer.Domain.Tests;

public sealed class TargetTests
{
    [Theory]
    [InlineData(0.5, 0.5, 0)]
    [InlineData(39.5, 20, 60)]
    public void Target_AtTheLimits_IsTaken(double centre, double width, double feet)
    {
        var target = Make(centre, width, feet);
        Assert.Equal((centre, width, feet), (target.Centre.Boards, target.Width.Boards, target.Distance.Value));
    }

    [Theory]
    [InlineData(0.4999, 3, 15)]
    [InlineData(39.5001, 3, 15)]
    [InlineData(10, 0.4999, 15)]
    [InlineData(10, 20.0001, 15)]
    [InlineData(10, -3, 15)]
    [InlineData(10, 3, -0.001)]
    [InlineData(10, 3, 60.001)]
    public void Target_OutsideTheLimits_Throws(double centre, double width, double feet) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Make(centre, width, feet));

    [Fact]
    public void Edges_AnyTarget_LieHalfAWidthFromTheCentre()
    {
        var target = Make(10.5, 3, 15);
        Assert.Equal(9, target.OutsideEdge.Boards);
        Assert.Equal(12, target.InsideEdge.Boards);
    }

    [Fact]
    public void Aim_NoTarget_Throws() => Assert.Throws<ArgumentException>(() => new Aim("none", []));

    [Theory]
    [InlineData(15, 15)]
    [InlineData(42, 15)]
    public void Aim_NotByDistance_Throws(double first, double second) =>
        Assert.Throws<ArgumentException>(() => new Aim("line", [new("a", Make(10, 3, first)), new("b", Make(8, 3, second))]));

    [Fact]
    public void IsLine_TwoTargets_IsTrue()
    {
        NamedTarget arrows = new("arrows", Make(10, 3, 15)), downlane = new("downlane", Make(8, 3, 42));
        Assert.False(new Aim("one", [arrows]).IsLine);
        Assert.True(new Aim("line", [arrows, downlane]).IsLine);
    }

    private static Target Make(double centre, double width, double feet) =>
        new(Board.FromBoards(centre), BoardOffset.FromBoards(width), Feet.FromFeet(feet));
}
