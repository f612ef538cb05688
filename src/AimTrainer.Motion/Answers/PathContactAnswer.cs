namespace AimTrainer.Motion;

/// <summary>The touch of the head pin, for machines.</summary>
/// <param name="Board">Board of the ball's middle.</param>
/// <param name="AngleDeg">Heading, positive inward.</param>
/// <param name="Feet">Distance of the ball's middle.</param>
public sealed record PathContactAnswer(decimal? Board, decimal? AngleDeg, decimal? Feet);
