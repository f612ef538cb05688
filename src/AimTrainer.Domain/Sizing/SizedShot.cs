namespace AimTrainer.Domain;

/// <summary>What a sizing rule is told of a shot.</summary>
/// <param name="Held">Whether the target was held.</param>
/// <param name="Miss">How far from its centre the ball crossed.</param>
public readonly record struct SizedShot(bool Held, BoardOffset Miss);
