using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>One ball against the reference ball on one line.</summary>
/// <param name="Ball">The ball.</param>
/// <param name="Line">The line.</param>
/// <param name="ReferenceThrows">Good throws of the reference ball.</param>
/// <param name="BallThrows">Good throws of the ball.</param>
/// <param name="AdjustedFor">What is measured on every throw and adjusted for.</param>
/// <param name="NotAdjustedFor">What is not, and why.</param>
/// <param name="Measures">What is compared.</param>
/// <param name="NotCompared">What could not be compared, and why.</param>
/// <param name="Sentence">All of it in words.</param>
public sealed record LineComparison(
    string Ball,
    string Line,
    int ReferenceThrows,
    int BallThrows,
    ValueList<string> AdjustedFor,
    ValueList<string> NotAdjustedFor,
    ValueList<MeasureComparison> Measures,
    ValueList<string> NotCompared,
    string Sentence);
