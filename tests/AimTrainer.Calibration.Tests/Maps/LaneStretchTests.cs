using AimTrainer.Domain;

namespace AimTrainer.Calibration.Tests;

public sealed class LaneStretchTests
{
    [Theory]
    [InlineData(29.9)]
    [InlineData(30)]
    [InlineData(31)]
    [InlineData(34.5)]
    [InlineData(36)]
    public void WeightAt_TwoThatOverlap_IsOneTogether(double feet)
    {
        var near = new LaneStretch(Feet.FromFeet(0), Feet.FromFeet(36), Feet.FromFeet(0), Feet.FromFeet(6));
        var far = new LaneStretch(Feet.FromFeet(30), Feet.FromFeet(60), Feet.FromFeet(6), Feet.FromFeet(0));
        Assert.Equal(1, near.WeightAt(Feet.FromFeet(feet)) + far.WeightAt(Feet.FromFeet(feet)), 12);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(36.1)]
    public void WeightAt_OutsideTheStretch_IsNothing(double feet) =>
        Assert.Equal(0, new LaneStretch(Feet.FromFeet(0), Feet.FromFeet(36), Feet.FromFeet(0), Feet.FromFeet(6)).WeightAt(Feet.FromFeet(feet)));
}
