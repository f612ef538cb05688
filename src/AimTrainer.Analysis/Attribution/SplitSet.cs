using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Where the misses of many shots at one line, or at one target, came from.</summary>
/// <param name="Line">The places of the targets.</param>
/// <param name="Shots">Shots thrown.</param>
/// <param name="Split">Those whose straight part is known, n.</param>
/// <param name="NotSplit">What was not measured of the others.</param>
/// <param name="Plan">What the parts are held against; null when there is none.</param>
/// <param name="PlanWhy">Why there is no plan, or why it is this one.</param>
/// <param name="StraightFeet">How far the lane profile takes the ball to run straight: nothing beyond is read as angle.</param>
/// <param name="LaydownOffBoards">Mean laydown less the plan's, positive inside.</param>
/// <param name="AngleOffDegrees">Mean launch angle less the plan's, positive outward.</param>
/// <param name="LaydownSpreadBoards">Standard deviation (n - 1) of the laydown.</param>
/// <param name="AngleSpreadDegrees">Standard deviation (n - 1) of the launch angle.</param>
/// <param name="LaydownSpreadWithoutNoiseBoards">The same with the readings' errors taken out.</param>
/// <param name="AngleSpreadWithoutNoiseDegrees">The same with the readings' errors taken out.</param>
/// <param name="LaydownAngleCorrelation">Of laydown and slope: negative means that they make up for each other.</param>
/// <param name="AimDistance">Where the paths come together, as measured.</param>
/// <param name="AimDistanceWithoutNoise">The same with the readings' errors taken out; null when they are not known.</param>
/// <param name="Targets">At each target, nearest first.</param>
public sealed record SplitSet(
    string Line,
    int Shots,
    int Split,
    ValueList<NotSplit> NotSplit,
    LinePlan? Plan,
    string PlanWhy,
    Feet StraightFeet,
    BoundedEstimate LaydownOffBoards,
    BoundedEstimate AngleOffDegrees,
    BoundedEstimate LaydownSpreadBoards,
    BoundedEstimate AngleSpreadDegrees,
    BoundedEstimate LaydownSpreadWithoutNoiseBoards,
    BoundedEstimate AngleSpreadWithoutNoiseDegrees,
    double? LaydownAngleCorrelation,
    AimDistance AimDistance,
    AimDistance? AimDistanceWithoutNoise,
    ValueList<TargetCauses> Targets);
