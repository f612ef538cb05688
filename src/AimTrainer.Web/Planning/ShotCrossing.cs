namespace AimTrainer.Web;

/// <summary>A place where a ball was seen.</summary>
/// <param name="Feet">Feet past the foul line.</param>
/// <param name="Board">The bowler's board.</param>
public sealed record ShotCrossing(double Feet, double Board);
