using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

/// <summary>Graded targets for tests.</summary>
internal static class SampleResult
{
    /// <summary>What a shot did at a target 3 boards wide on board 10 at the arrows; null for a crossing that nobody measured.</summary>
    public static TargetResult At(double? board, string name = "arrows")
    {
        var reading = new ShotReading();
        if (board is { } seen)
        {
            reading.AddCrossing(15, seen);
        }

        var target = new Target(Board.FromBoards(10), BoardOffset.FromBoards(3), Feet.FromFeet(15));
        return Grader.Grade(reading.Check(out _)!, new NamedTarget(name, target), GradeBands.Default);
    }
}
