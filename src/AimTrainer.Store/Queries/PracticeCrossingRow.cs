using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>A <see cref="PracticeCrossing"/> as the database gives it: the ball by its row.</summary>
internal sealed class PracticeCrossingRow
{
    public required string SessionId { get; init; }

    public required int Number { get; init; }

    public required DateTimeOffset At { get; init; }

    public required int Run { get; init; }

    public required BlockKind? Kind { get; init; }

    public required long? BallId { get; init; }

    public required string Target { get; init; }

    public required double DistanceFeet { get; init; }

    public required double CentreBoard { get; init; }

    public required double WidthBoards { get; init; }

    public required CrossingKind Crossing { get; init; }

    public required double? CrossingBoard { get; init; }

    public required double? MissBoards { get; init; }

    public required bool? Held { get; init; }

    public required double? LaydownBoard { get; init; }

    public required double? LaunchAngleDegrees { get; init; }

    public required double? SpeedMph { get; init; }

    public required double? RevsRpm { get; init; }

    public required SpeedPlace? SpeedAt { get; init; }

    public PracticeCrossing ToCrossing(Dictionary<long, string> balls) => new(
        SessionId, Number, At, Run, Kind, BallId is { } id ? balls.GetValueOrDefault(id) : null, Target, DistanceFeet, CentreBoard, WidthBoards,
        Crossing, CrossingBoard, MissBoards, Held, LaydownBoard, LaunchAngleDegrees, SpeedMph, RevsRpm)
    {
        SpeedAt = SpeedAt,
    };
}
