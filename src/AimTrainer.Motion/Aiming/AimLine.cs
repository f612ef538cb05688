namespace AimTrainer.Motion;

/// <summary>A line that a bowler may mean to throw.</summary>
/// <param name="LaydownBoard">The bowler's board at the laydown.</param>
/// <param name="LaunchAngleDegrees">Positive outward.</param>
public readonly record struct AimLine(double LaydownBoard, double LaunchAngleDegrees);
