using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>How one shot crossed one of its targets, with what else was measured of it. What was not measured is null.</summary>
/// <param name="SessionId">The session.</param>
/// <param name="Number">The shot's number in it.</param>
/// <param name="At">When it came in.</param>
/// <param name="Run">The run of its block, from 0.</param>
/// <param name="Kind">What its block is for.</param>
/// <param name="Ball">The ball.</param>
/// <param name="Target">The target's name.</param>
/// <param name="DistanceFeet">Its distance.</param>
/// <param name="CentreBoard">Its middle as it was shown.</param>
/// <param name="WidthBoards">Its width as it was shown.</param>
/// <param name="Crossing">How well the crossing is known.</param>
/// <param name="CrossingBoard">Where the ball crossed.</param>
/// <param name="MissBoards">Crossing less centre, positive inside.</param>
/// <param name="Held">Whether the target was held.</param>
/// <param name="LaydownBoard">Board at the foul line.</param>
/// <param name="LaunchAngleDegrees">Positive outward.</param>
/// <param name="SpeedMph">Speed.</param>
/// <param name="RevsRpm">Revolutions a minute.</param>
public sealed record PracticeCrossing(
    string SessionId,
    int Number,
    DateTimeOffset At,
    int Run,
    BlockKind? Kind,
    string? Ball,
    string Target,
    double DistanceFeet,
    double CentreBoard,
    double WidthBoards,
    CrossingKind Crossing,
    double? CrossingBoard,
    double? MissBoards,
    bool? Held,
    double? LaydownBoard,
    double? LaunchAngleDegrees,
    double? SpeedMph,
    double? RevsRpm)
{
    /// <summary>Where the speed was measured; null when there is none, or nobody said.</summary>
    public SpeedPlace? SpeedAt { get; init; }
}
