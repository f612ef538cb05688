namespace AimTrainer.Analysis;

/// <summary>Where a ball belongs in the bag: where it turns and how sharply on a line, from its own records.</summary>
/// <param name="Ball">The ball.</param>
/// <param name="Line">The line.</param>
/// <param name="Throws">Good throws.</param>
/// <param name="BreakpointFeet">Mean distance of the breakpoint.</param>
/// <param name="BreakpointBoard">Mean board of the breakpoint.</param>
/// <param name="SharpnessDegreesPerFoot">Mean sharpness.</param>
/// <param name="EntryBoard">Mean board at the pins.</param>
/// <param name="EntryAngleDegrees">Mean direction at the pins.</param>
public sealed record BallOnLine(
    string Ball,
    string Line,
    int Throws,
    BoundedEstimate BreakpointFeet,
    BoundedEstimate BreakpointBoard,
    BoundedEstimate SharpnessDegreesPerFoot,
    BoundedEstimate EntryBoard,
    BoundedEstimate EntryAngleDegrees);
