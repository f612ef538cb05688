using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>A <see cref="PracticeBlock"/> as the database gives it: the ball by its row.</summary>
internal sealed class PracticeSum
{
    public required string SessionId { get; init; }

    public required DateTimeOffset StartedAt { get; init; }

    public required int Run { get; init; }

    public required string? BlockName { get; init; }

    public required BlockKind? Kind { get; init; }

    public required long? BallId { get; init; }

    public required string Target { get; init; }

    public required double DistanceFeet { get; init; }

    public required int Shots { get; init; }

    public required int Graded { get; init; }

    public required int Held { get; init; }

    public required double SumOfMisses { get; init; }

    public required double SumOfSizes { get; init; }

    public required double SumOfSquares { get; init; }

    public required double? LowestBoard { get; init; }

    public required double? HighestBoard { get; init; }

    public required int WholeBoards { get; init; }

    public PracticeBlock ToBlock(Dictionary<long, string> balls) => new(
        SessionId, StartedAt, Run, BlockName, Kind, BallId is { } id ? balls.GetValueOrDefault(id) : null, Target, DistanceFeet, Shots, Graded, Held,
        SumOfMisses, SumOfSizes, SumOfSquares, LowestBoard, HighestBoard, WholeBoards);
}
