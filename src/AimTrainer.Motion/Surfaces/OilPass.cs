namespace AimTrainer.Motion;

/// <summary>One pass of the oil machine: the same units on every board from one to another, from one distance to another.</summary>
/// <param name="FromBoard">First board, from the right edge, 1 to 39.</param>
/// <param name="ToBoard">Last board, from the right edge, not before the first.</param>
/// <param name="StartFeet">Where it starts, 0 to 60 ft.</param>
/// <param name="EndFeet">Where it ends, farther down, up to 60 ft.</param>
/// <param name="StartUnits">Units of oil that it lays where it starts.</param>
/// <param name="EndUnits">Units that it lays where it ends; in a straight line between.</param>
public readonly record struct OilPass(int FromBoard, int ToBoard, double StartFeet, double EndFeet, double StartUnits, double EndUnits);
