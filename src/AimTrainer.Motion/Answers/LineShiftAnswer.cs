using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>How far a move shifts a line at a distance, for machines.</summary>
/// <param name="Feet">Feet past the foul line.</param>
/// <param name="Boards">Positive inward.</param>
public sealed record LineShiftAnswer(Feet Feet, BoardOffset Boards);
