namespace AimTrainer.Motion;

/// <summary>Where the middle of a ball is at one distance: bare doubles whose names carry the unit.</summary>
/// <param name="Feet">Feet past the foul line.</param>
/// <param name="Board">The bowler's board.</param>
/// <param name="Seconds">Time from the laydown.</param>
/// <param name="AngleDegrees">Heading, positive inward.</param>
/// <param name="MetresPerSecond">Speed.</param>
/// <param name="SlipMetresPerSecond">Slip of the contact point; 0 when the ball rolls.</param>
public readonly record struct PathPoint(double Feet, double Board, double Seconds, double AngleDegrees, double MetresPerSecond, double SlipMetresPerSecond);
