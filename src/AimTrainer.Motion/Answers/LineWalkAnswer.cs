using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>One line of a walk across the lane, for machines.</summary>
/// <param name="Line">Both targets, BOARD@FEET.</param>
/// <param name="ArrowsBoard">Board at the arrows.</param>
/// <param name="LaydownBoard">Board at the foul line.</param>
/// <param name="LaunchAngleDeg">Positive outward.</param>
/// <param name="SlideBoard">Board of the slide foot.</param>
public sealed record LineWalkAnswer(string Line, Board ArrowsBoard, Board LaydownBoard, Degrees LaunchAngleDeg, Board SlideBoard);
