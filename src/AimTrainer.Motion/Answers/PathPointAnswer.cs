namespace AimTrainer.Motion;

/// <summary>A point of a path, for machines.</summary>
/// <param name="Feet">Feet past the foul line.</param>
/// <param name="Board">The bowler's board.</param>
/// <param name="TimeS">From the laydown.</param>
public sealed record PathPointAnswer(decimal? Feet, decimal? Board, decimal? TimeS);
