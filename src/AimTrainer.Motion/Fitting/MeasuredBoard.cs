namespace AimTrainer.Motion;

/// <summary>A measured crossing for a fit: bare doubles whose names carry the unit.</summary>
/// <param name="Feet">Feet past the foul line, 0 to 60.</param>
/// <param name="Board">The bowler's board, on the lane: 0.5 to 39.5.</param>
public readonly record struct MeasuredBoard(double Feet, double Board);
