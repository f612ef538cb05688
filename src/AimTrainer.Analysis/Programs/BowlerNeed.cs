using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>What the measured figures of a session say about who needs help, and what they cannot say.</summary>
/// <param name="Reasons">The reasons, the most pressing first; empty when none is seen.</param>
/// <param name="SpreadRatio">Late spread / early spread with its 95 % limits; unknown below <see cref="NeedRule.FewestShots"/> shots.</param>
/// <param name="SpeedChangeMph">Late mean speed less early one with its 95 % limits; unknown where speed is not measured.</param>
/// <param name="MinutesSinceShot">Minutes since the last shot; null before the first.</param>
/// <param name="UsualMinutes">The bowler's own usual time between shots today; null below <see cref="NeedRule.FewestGaps"/> gaps.</param>
public sealed record BowlerNeed(
    ValueList<NeedKind> Reasons, BoundedEstimate SpreadRatio, BoundedEstimate SpeedChangeMph, double? MinutesSinceShot, double? UsualMinutes);
