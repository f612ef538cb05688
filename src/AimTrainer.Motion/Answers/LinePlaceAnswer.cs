using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Where a straight line lies at a distance, for machines.</summary>
/// <param name="Feet">Feet past the foul line.</param>
/// <param name="Board">The bowler's board.</param>
/// <param name="AcrossInches">From the lane's right edge.</param>
public sealed record LinePlaceAnswer(Feet Feet, Board Board, Inches AcrossInches);
