using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>How an invented ball leaves the hand, before anything is measured.</summary>
/// <param name="LaydownBoard">The bowler's board at the foul line.</param>
/// <param name="LaunchAngleDegrees">Positive outward.</param>
/// <param name="SpeedMilesPerHour">At release.</param>
/// <param name="RevsRpm">At release.</param>
/// <param name="Hand">Which hand.</param>
public readonly record struct Release(double LaydownBoard, double LaunchAngleDegrees, double SpeedMilesPerHour, double RevsRpm, Hand Hand);
