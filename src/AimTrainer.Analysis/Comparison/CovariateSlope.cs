namespace AimTrainer.Analysis;

/// <summary>What something that differed between throws does to a measure.</summary>
/// <param name="Name"><c>laydownBoard</c>, <c>launchAngleDeg</c>, <c>speedMph</c>, <c>revsRpm</c>, or <c>throwNumber</c> for the drift of the lane.</param>
/// <param name="Slope">Units of the measure for one unit of it, with 95 % limits.</param>
/// <param name="ReferenceMean">Its mean over the reference ball's throws.</param>
/// <param name="BallMean">Its mean over the other ball's throws.</param>
public sealed record CovariateSlope(string Name, BoundedEstimate Slope, double ReferenceMean, double BallMean);
