namespace AimTrainer.Reports;

/// <summary>A mark on the lane, as the bowler's boards count.</summary>
/// <param name="Kind">What it is: arrow, dot or downlane.</param>
/// <param name="DistanceFeet">Where along the lane.</param>
/// <param name="Board">On which board.</param>
public sealed record LaneMark(string Kind, double DistanceFeet, double Board);
