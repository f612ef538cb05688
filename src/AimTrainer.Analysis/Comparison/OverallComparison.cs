namespace AimTrainer.Analysis;

/// <summary>One measure of one ball against the reference ball over all lines; each line counts the same.</summary>
/// <param name="Ball">The ball.</param>
/// <param name="Measure">What is compared.</param>
/// <param name="Lines">How many lines tell it.</param>
/// <param name="Difference">Mean of the lines' differences.</param>
/// <param name="LinesDifferP">How often chance alone makes lines differ at least so much: below 0.05 the mean hides something.</param>
/// <param name="Equivalence">Whether the mean is shown to be smaller than the margin.</param>
/// <param name="Verdict">What can be said of the mean.</param>
/// <param name="HolmP">P among all that are judged.</param>
/// <param name="Sentence">In words.</param>
public sealed record OverallComparison(
    string Ball,
    ComparedMeasure Measure,
    int Lines,
    MeanDifference Difference,
    double? LinesDifferP,
    Equivalence? Equivalence,
    ComparisonVerdict Verdict,
    double? HolmP,
    string Sentence);
