namespace AimTrainer.Analysis;

/// <summary>One measure of one ball against the reference ball on one line. Differences are the ball less the reference ball.</summary>
/// <param name="Measure">What is compared.</param>
/// <param name="ReferenceThrows">How many throws of the reference ball have it.</param>
/// <param name="BallThrows">How many of the other ball.</param>
/// <param name="Unadjusted">Plain difference of the means, by Welch.</param>
/// <param name="Adjusted">Adjusted difference; null when there is nothing to adjust for, or too few throws.</param>
/// <param name="Paired">By pairs; null where throws do not alternate.</param>
/// <param name="HodgesLehmann">By ranks, not adjusted.</param>
/// <param name="HodgesLehmannAdjusted">By ranks, of the adjusted values; its limits leave out how unsure the slopes are. Null when nothing is adjusted.</param>
/// <param name="Equivalence">Whether the difference is shown to be smaller than the margin; null when that is not known.</param>
/// <param name="Spread">Whether one ball scatters more; null when that is not known.</param>
/// <param name="Verdict">What can be said.</param>
/// <param name="HolmP">P of the difference among all that are judged; null when it is not judged.</param>
/// <param name="SpreadHolmP">P of the spread among all spreads that are judged.</param>
/// <param name="MoreThrows">How many more good throws of each ball would settle it, if difference and scatter stay; null when it is settled or not known.</param>
/// <param name="MoreThrowsWhy">Why that is not known; null when it is, or when nothing is open.</param>
/// <param name="Sentence">In words; empty when it is not judged.</param>
public sealed record MeasureComparison(
    ComparedMeasure Measure,
    int ReferenceThrows,
    int BallThrows,
    MeanDifference Unadjusted,
    CovarianceAdjustment? Adjusted,
    PairedComparison? Paired,
    BoundedEstimate HodgesLehmann,
    BoundedEstimate? HodgesLehmannAdjusted,
    Equivalence? Equivalence,
    SpreadTest? Spread,
    ComparisonVerdict Verdict,
    double? HolmP,
    double? SpreadHolmP,
    int? MoreThrows,
    string? MoreThrowsWhy,
    string Sentence)
{
    /// <summary>The difference that is judged: adjusted where it can be.</summary>
    public MeanDifference Best => Adjusted?.Difference ?? Unadjusted;
}
