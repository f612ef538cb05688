namespace AimTrainer.Analysis;

/// <summary>A least-squares fit of <c>y = asymptote + gain · f(rate, x)</c>.</summary>
/// <param name="Asymptote">The value that the curve goes towards.</param>
/// <param name="Gain">What the bent part is multiplied by.</param>
/// <param name="Rate">The rate.</param>
/// <param name="AsymptoteError">Its standard error; null when it is held at 0, or there is no point to spare.</param>
/// <param name="GainError">Its standard error; null when there is no point to spare.</param>
/// <param name="RateError">Its standard error; null when there is no point to spare.</param>
/// <param name="ResidualSquares">Sum of the squared residuals.</param>
/// <param name="ResidualSpread">Residual standard deviation; null when there is no point to spare.</param>
/// <param name="AsymptoteHeld">Whether the asymptote is held at 0, because the best one would be below, or there is none.</param>
/// <param name="RateAtLimit">Whether the best rate lies at an end of the range looked through: then the rate is not known.</param>
/// <param name="Criteria">To compare it with other models.</param>
public sealed record FittedCurve(
    double Asymptote,
    double Gain,
    double Rate,
    double? AsymptoteError,
    double? GainError,
    double? RateError,
    double ResidualSquares,
    double? ResidualSpread,
    bool AsymptoteHeld,
    bool RateAtLimit,
    InformationCriteria Criteria);
