using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Display.Tests;

/// <summary>The geometry of seeing the lane at a flat angle, against a pinhole picture worked out point by point.</summary>
public sealed class BowlerViewTests
{
    [Fact]
    public void SeenHeight_FortyFiveDegreesDown_IsThatOfATriangle()
    {
        // An eye 5 ft up sees a point 5 ft before it 45 degrees down, and one 5√3 ft before it 30 degrees down.
        var view = new BowlerView(Feet.FromFeet(5), Feet.FromFeet(0));
        Assert.Equal(15, view.SeenHeight(Feet.FromFeet(5), Feet.FromFeet(5 * Math.Sqrt(3))).Value, 1e-9);
    }

    [Fact]
    public void SeenWidth_AnyPlace_IsTheAngleBetweenTheRays() => Gen.Select(AnyView, Gen.Double[0, 60], Gen.Double[0.5, 25]).Sample(
        (view, down, inches) =>
        {
            var half = inches / 24;
            double[] one = [half, view.Behind.Value + down, -view.EyeHeight.Value];
            double[] other = [-half, view.Behind.Value + down, -view.EyeHeight.Value];
            var cosine = one.Zip(other, (a, b) => a * b).Sum() / one.Sum(a => a * a);
            Assert.Equal(Math.Acos(cosine) * 180 / Math.PI, view.SeenWidth(Inches.FromInches(inches), Feet.FromFeet(down)).Value, 1e-6);
        },
        iter: 300);

    [Fact]
    public void LengthSeenUnder_AnyAngle_IsSeenUnderThatAngle() => Gen.Select(AnyView, Gen.Double[5, 60], Gen.Double[0.05, 0.7]).Sample(
        (view, down, seen) =>
        {
            var half = view.LengthSeenUnder(Degrees.FromDegrees(seen), Feet.FromFeet(down)).Value / 24;
            Assert.Equal(seen, view.SeenHeight(Feet.FromFeet(down - half), Feet.FromFeet(down + half)).Value, 1e-9);
        },
        iter: 300);

    [Theory]
    [InlineData(1.9, 20)]
    [InlineData(8.1, 20)]
    [InlineData(5.5, -1)]
    [InlineData(5.5, 31)]
    public void Constructor_OutOfRange_Throws(double eye, double behind)
    {
        // Feet hold no 31 behind the line as a negative place, but a stand is a distance.
        Assert.Throws<ArgumentOutOfRangeException>(() => new BowlerView(Feet.FromFeet(eye), Feet.FromFeet(behind)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(11)]
    public void LengthSeenUnder_AngleOutOfRange_Throws(double degrees) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BowlerView.Default.LengthSeenUnder(Degrees.FromDegrees(degrees), Feet.FromFeet(15)));

    [Fact]
    public void SpanOf_AnyTarget_IsSeenAsHighAsSaid() => Gen.Select(Gen.Double[4, 60], Gen.Double[0.5, 20]).Sample(
        (feet, boards) =>
        {
            var target = new Target(Board.LaneCentre, BoardOffset.FromBoards(boards), Feet.FromFeet(feet));
            var lane = LaneProfileReader.Default;
            var (near, far) = TargetLength.SpanOf(target, lane, BowlerView.Default);
            var wide = BowlerView.Default.SeenWidth(lane.InchesOf(target.Width), target.Distance).Value;
            var high = BowlerView.Default.SeenHeight(near, far).Value;

            Assert.Equal(2 * feet, near.Value + far.Value, 1e-9);
            if (far.Value - near.Value > 0.5 + 1e-9)
            {
                Assert.Equal(Math.Clamp(0.8 * wide, 0.14, 0.35), high, 1e-6);
            }
            else
            {
                Assert.InRange(high, 0.14, 0.35);
            }
        },
        iter: 300);

    [Theory]
    [InlineData(6, 1)]
    [InlineData(15, 1)]
    [InlineData(15, 3)]
    [InlineData(15, 9)]
    [InlineData(45, 1)]
    [InlineData(45, 5)]
    [InlineData(60, 1)]
    public void SpanOf_BowlerElsewhereBehindTheLine_StillSeesMoreThanTheSmallestLetter(double feet, double boards)
    {
        var target = new Target(Board.LaneCentre, BoardOffset.FromBoards(boards), Feet.FromFeet(feet));
        var (near, far) = TargetLength.SpanOf(target, LaneProfileReader.Default, BowlerView.Default);
        foreach (var behind in new[] { BowlerView.Nearest, BowlerView.Farthest })
        {
            // Source: 5 minutes of arc, as in LaneReadingTests; the upper limit keeps a target from looking like a stripe along the lane.
            Assert.InRange(new BowlerView(Feet.FromFeet(5.5), Feet.FromFeet(behind)).SeenHeight(near, far).Value, 5 / 60.0, 0.55);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void SpanOf_TargetAtTheFoulLine_IsShort(double feet)
    {
        var (near, far) = TargetLength.SpanOf(
            new Target(Board.LaneCentre, BoardOffset.FromBoards(3), Feet.FromFeet(feet)), LaneProfileReader.Default, BowlerView.Default);
        Assert.InRange(near.Value, -0.25, feet);
        Assert.Equal(2 * feet, near.Value + far.Value, 1e-9);
        Assert.InRange(far.Value - near.Value, 0.5, 0.6);
    }

    private static Gen<BowlerView> AnyView => Gen.Select(Gen.Double[4, 6.5], Gen.Double[15, 25]).Select((eye, behind) => new BowlerView(Feet.FromFeet(eye), Feet.FromFeet(behind)));
}
