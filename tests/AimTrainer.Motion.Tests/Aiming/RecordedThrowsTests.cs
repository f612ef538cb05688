using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

public sealed class RecordedThrowsTests
{
    [Fact]
    public void Of_ShotsOfAKnownScatterAtTwoLines_FindsItWhateverTheLines()
    {
        var recorded = RecordedThrows.Of([(Shots(20, 2, 1, 300), LaneProfileReader.Default), (Shots(26, 3.5, 2, 300), LaneProfileReader.Default)], Hand.Left, null, null);

        var bowler = recorded.Bowler!;
        Assert.Equal((600, null, Hand.Left), (recorded.Shots, recorded.Problem, bowler.Hand));
        Assert.InRange(bowler.SpeedMph, 16.9, 17.1);

        // 598 degrees of freedom: a standard deviation is told to 2.9 %; four of those, and twice 0.95 / sqrt(598) for a correlation.
        double[] put = [0.6, 0.25, 0.4, 14];
        Assert.All(put.Zip(bowler.Scatter.Spreads), pair => Assert.InRange(pair.Second, 0.88 * pair.First, 1.12 * pair.First));
        Assert.InRange(bowler.Scatter.Correlations[1], (0.95 * 0.5) - 0.13, (0.95 * 0.5) + 0.13);
        Assert.InRange(bowler.Scatter.Correlations[2], -0.16, 0.16);
        Assert.Equal((40, 9), (Math.Round(bowler.AxisRotationDegrees), Math.Round(bowler.AxisTiltDegrees)));
    }

    [Fact]
    public void Of_TooFewOrNoRotation_SaysWhatIsMissing()
    {
        Assert.Contains("19 shots of the record", RecordedThrows.Of([(Shots(20, 2, 1, 20), LaneProfileReader.Default)], Hand.Right, null, null).Problem, StringComparison.Ordinal);
        var without = Shots(20, 2, 1, 30, rotation: false);
        Assert.Equal(RecordedBowler.NoRotation, RecordedThrows.Of([(without, LaneProfileReader.Default)], Hand.Right, null, null).Problem);
        Assert.Equal(50, RecordedThrows.Of([(without, LaneProfileReader.Default)], Hand.Right, 50, null).Bowler!.AxisRotationDegrees);
    }

    /// <summary>Laydown and angle go together (correlation 0.5); speed and revs by themselves.</summary>
    private static IEnumerable<Shot> Shots(double laydown, double angle, ulong seed, int count, bool rotation = true) => Enumerable.Range(0, count).Select(i =>
    {
        double Normal(int which) => StandardNormal.Quantile(SeededRandom.Unit(seed, (ulong)((4 * i) + which)));
        var first = Normal(0);
        var reading = new ShotReading
        {
            LaydownBoard = laydown + (0.6 * first),
            LaunchAngleDegrees = angle + (0.25 * ((0.5 * first) + (Math.Sqrt(0.75) * Normal(1)))),
            SpeedMilesPerHour = 17 + (0.4 * Normal(2)),
            SpeedPlace = SpeedPlace.Release,
            RevsRpm = 300 + (14 * Normal(3)),
            AxisRotationDegrees = rotation ? 40 : null,
            AxisTiltDegrees = 9,
        };
        return reading.Check(out _)!;
    });
}
