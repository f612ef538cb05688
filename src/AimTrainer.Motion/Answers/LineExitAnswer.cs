using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Where a ball should leave the oil, as common practice, and where the line is there; for machines.</summary>
/// <param name="Feet">Where the oil ends.</param>
/// <param name="Board">The exit board: length less 31.</param>
/// <param name="LineBoard">Board of the line there.</param>
/// <param name="LineInsideBoards">How far inside of the exit board that is.</param>
public sealed record LineExitAnswer(Feet Feet, Board Board, Board LineBoard, BoardOffset LineInsideBoards);
