using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A difference that is adjusted for what still differed between the throws.</summary>
/// <param name="Difference">The ball less the reference ball for the same throw on the same lane, with 95 % limits.</param>
/// <param name="Slopes">What it is adjusted for.</param>
/// <param name="Drift">How the measure moved from throw to throw, by the reference ball's own throws; null when that is not taken out.</param>
/// <param name="BallDrift">How it moved by the other ball's own throws; null when drift is not taken out.</param>
/// <param name="Deviation">Standard deviation that is left.</param>
/// <param name="SlopesDifferP">How often chance alone makes slopes of the two balls differ at least so much; null when that is not known.</param>
/// <param name="NotUsed">What was measured and is not adjusted for, and why.</param>
public sealed record CovarianceAdjustment(
    MeanDifference Difference,
    ValueList<CovariateSlope> Slopes,
    BoundedEstimate? Drift,
    BoundedEstimate? BallDrift,
    double Deviation,
    double? SlopesDifferP,
    ValueList<string> NotUsed);
