namespace AimTrainer.Domain;

/// <summary>
/// How a bowler moves to another line, in boards, both positive inside: "2-and-1" is feet 2, target 1. The laydown moves as
/// the feet do.
/// </summary>
/// <param name="Feet">How far the feet, and so the laydown at the foul line, move.</param>
/// <param name="Target">How far the target moves.</param>
public readonly record struct LineMove(BoardOffset Feet, BoardOffset Target);
