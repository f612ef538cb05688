namespace AimTrainer.Reports;

/// <summary>A place at which a ball was seen.</summary>
/// <param name="Feet">Past the foul line.</param>
/// <param name="Board">The board there.</param>
/// <param name="Misread">Whether the comparison left it out: misread or real?</param>
public sealed record BallsPlace(double Feet, double Board, bool Misread = false);
