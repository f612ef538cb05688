namespace AimTrainer.Domain.Tests;

public sealed class LaunchAnglesTests
{
    [Fact]
    public void Of_Reported_IsNotComputed()
    {
        var shot = SampleShot.Of([(15, 10)], reading => (reading.LaydownBoard, reading.LaunchAngleDegrees) = (20, 0.5));
        Assert.Equal(new LaunchAngle(Degrees.FromDegrees(0.5), Computed: false), LaunchAngles.Of(shot, SampleLane.Usual));
    }

    [Fact]
    public void Of_LaydownAndArrows_IsComputedPositiveOutward()
    {
        // Source: 15 to 7 at 40 ft has its laydown on 19.8 and leaves 1.625 degrees toward the bowler's own gutter
        // (bowl4fun.com tip 18 for the pair; laydown and angle derived).
        var outward = LaunchAngles.Of(SampleShot.Of([(15, 15)], reading => reading.LaydownBoard = 19.8), SampleLane.Usual);
        Assert.True(outward!.Value.Computed);
        Assert.Equal(1.6254, outward.Value.Angle.Value, 0.0005);

        var inward = LaunchAngles.Of(SampleShot.Of([(15, 19.8)], reading => reading.LaydownBoard = 15), SampleLane.Usual);
        Assert.Equal(-1.6254, inward!.Value.Angle.Value, 0.0005);
    }

    [Fact]
    public void Of_SeveralCrossings_TakesTheFarthestInTheStraightPart()
    {
        // Straight to 20 ft, inclusive: the crossing at 20.001 ft may already hook.
        var shot = SampleShot.Of([(0, 3), (10, 30), (20, 15), (20.001, 39)], reading => reading.LaydownBoard = 20);
        var expected = LineArithmetic.LaunchAngle(
            new Crossing(default, Board.FromBoards(20)), new Crossing(Feet.FromFeet(20), Board.FromBoards(15)), SampleLane.Usual);
        Assert.Equal(new LaunchAngle(expected, Computed: true), LaunchAngles.Of(shot, SampleLane.Usual));
    }

    [Theory]
    [InlineData(4.999, false)]
    [InlineData(5, true)]
    public void Of_CrossingNearTheFoulLine_NeedsFiveFeet(double feet, bool known) =>
        Assert.Equal(known, LaunchAngles.Of(SampleShot.Of([(feet, 18)], reading => reading.LaydownBoard = 20), SampleLane.Usual) is not null);

    [Fact]
    public void Of_NoLaydown_IsUnknown() => Assert.Null(LaunchAngles.Of(SampleShot.Of([(0, 20), (15, 15)]), SampleLane.Usual));

    [Fact]
    public void Of_NoCrossingInTheStraightPart_IsUnknown() =>
        Assert.Null(LaunchAngles.Of(SampleShot.Of([(20.001, 15), (42.5, 7)], reading => reading.LaydownBoard = 20), SampleLane.Usual));
}
