using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

/// <summary>Shots for tests.</summary>
internal static class MadeShots
{
    public static AccuracySettings Settings { get; } = new() { Lane = LaneProfileReader.Default };

    /// <summary>A shot with a laydown and crossings.</summary>
    public static Shot Shot(
        double? laydown, IEnumerable<(double Feet, double Board)> crossings, double? mph = null, double? rpm = null, double? angle = null, string? ball = null)
    {
        var reading = new ShotReading
        {
            LaydownBoard = laydown,
            SpeedMilesPerHour = mph,
            SpeedPlace = mph is null ? SpeedPlace.Unknown : SpeedPlace.Release,
            RevsRpm = rpm,
            LaunchAngleDegrees = angle,
            Ball = ball,
        };
        foreach (var (feet, board) in crossings)
        {
            reading.AddCrossing(feet, board);
        }

        return reading.Check(out var problems) ?? throw new InvalidOperationException(problems.ToString());
    }

    /// <summary>That shot at targets of a width of 3 boards.</summary>
    public static ObservedShot At(this Shot shot, int number, params (double Board, double Feet)[] targets) => new(
        shot,
        targets.Select((target, i) => ObservedTarget.At(
            i == 0 ? "first" : i == targets.Length - 1 ? "last" : $"target {i + 1}",
            shot,
            Board.FromBoards(target.Board),
            Feet.FromFeet(target.Feet),
            BoardOffset.FromBoards(3))).ToValueList())
    {
        NumberInSession = number,
        Ball = shot.Ball,
    };

    /// <summary>What is told of crossings at the arrows of a target 3 boards wide; null for one that nobody measured.</summary>
    public static TargetAccuracy AtTheArrows(double target, params double?[] boards) => AtTheArrows(Settings, target, boards);

    /// <summary>The same with other settings.</summary>
    public static TargetAccuracy AtTheArrows(AccuracySettings settings, double target, params double?[] boards)
    {
        var accumulator = new TargetAccuracyAccumulator("arrows", settings);
        foreach (var board in boards)
        {
            var shot = Shot(null, board is { } seen ? [(15, seen)] : []);
            accumulator.Add(ObservedTarget.At("arrows", shot, Board.FromBoards(target), Feet.FromFeet(15), BoardOffset.FromBoards(3)));
        }

        return accumulator.Result;
    }
}
