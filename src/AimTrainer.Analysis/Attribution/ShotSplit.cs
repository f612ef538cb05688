using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Where the misses of one shot came from.</summary>
/// <param name="Line">How the ball left; null when that is not known.</param>
/// <param name="LaydownOffBoards">Laydown less the plan's, positive inside; null when either is not known.</param>
/// <param name="AngleOffDegrees">Launch angle less the plan's, positive outward (too open); null when either is not known.</param>
/// <param name="Targets">At each target, nearest first.</param>
/// <param name="Why">Why the shot could not be split; null when it could.</param>
public sealed record ShotSplit(StraightLine? Line, double? LaydownOffBoards, double? AngleOffDegrees, ValueList<TargetSplit> Targets, string? Why);
