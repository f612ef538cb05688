using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>What came of comparing balls.</summary>
/// <param name="Problem">Why nothing could be compared and what to do; null when something could.</param>
/// <param name="Reference">The ball that the others are held against.</param>
/// <param name="Lines">Each ball on each line.</param>
/// <param name="Overall">Each ball over all lines; empty when there is one line only.</param>
/// <param name="Balls">Where each ball belongs, the one that turns first before the others; also when nothing could be compared.</param>
/// <param name="Excluded">What was left out and why, in the order thrown.</param>
/// <param name="Notices">What else to know.</param>
public sealed record ComparisonReport(
    string? Problem,
    string Reference,
    ValueList<LineComparison> Lines,
    ValueList<OverallComparison> Overall,
    ValueList<BallOnLine> Balls,
    ValueList<ExcludedThrow> Excluded,
    ValueList<string> Notices);
