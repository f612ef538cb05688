namespace AimTrainer.Domain;

/// <summary>Who bowls where: what a drill's places hang on.</summary>
/// <param name="Hand">The bowler's hand.</param>
/// <param name="Lane">The lane.</param>
/// <param name="Breakpoint">The bowler's recorded breakpoint; null when there is none.</param>
/// <param name="PatternLength">Length of the oil pattern of this session; null when nobody gave it.</param>
public sealed record DrillSetting(Hand Hand, LaneProfile Lane, Breakpoint? Breakpoint, Feet? PatternLength);
