namespace AimTrainer.Analysis.Tests;

/// <summary>What came of many comparisons.</summary>
/// <param name="Comparisons">How many.</param>
/// <param name="AnyClaim">Share in which any difference was called one.</param>
/// <param name="AnySpreadClaim">Share in which any spread was called different.</param>
/// <param name="Measures">By measure.</param>
internal sealed record ComparisonStudyResult(int Comparisons, double AnyClaim, double AnySpreadClaim, IReadOnlyList<ComparisonStudyMeasure> Measures)
{
    public ComparisonStudyMeasure this[string measure] => Measures.Single(one => one.Name == measure);

    public static ComparisonStudyResult Of(IReadOnlyList<(ComparisonReport Report, IReadOnlyDictionary<string, double> Truth)> comparisons)
    {
        var measures = comparisons.SelectMany(one => one.Truth.Keys).Distinct().Select(name =>
        {
            var found = comparisons
                .SelectMany(one => one.Report.Lines.AsEnumerable().SelectMany(line => line.Measures),
                    (one, measure) => (Measure: measure, Truth: one.Truth.GetValueOrDefault(name)))
                .Where(one => one.Measure.Measure.Name == name)
                .ToList();
            return new ComparisonStudyMeasure(
                name,
                comparisons.Average(one => one.Truth.GetValueOrDefault(name)),
                found.Count,
                Share(found, one => Holds(one.Measure.Best.Difference, one.Truth)),
                Share(found, one => Holds(one.Measure.Unadjusted.Difference, one.Truth)),
                HalfWidth(found.Select(one => one.Measure.Best)),
                HalfWidth(found.Select(one => one.Measure.Unadjusted)),
                Share(found, one => IsClaim(one.Measure)),
                Share(found, one => one.Measure.Verdict == ComparisonVerdict.Equal));
        });
        return new ComparisonStudyResult(
            comparisons.Count,
            Share(comparisons, one => one.Report.Lines.Any(line => line.Measures.Any(IsClaim))),
            Share(comparisons, one => one.Report.Lines.Any(line => line.Measures.Any(measure => measure.SpreadHolmP < BallComparer.Alpha))),
            [.. measures]);
    }

    private static double HalfWidth(IEnumerable<MeanDifference> found) => found.Average(one => (one.Difference.High - one.Difference.Low) / 2) ?? double.NaN;

    private static bool IsClaim(MeasureComparison measure) => measure.Verdict is ComparisonVerdict.Different or ComparisonVerdict.DifferentBeyondMargin;

    private static bool Holds(BoundedEstimate limits, double truth) => truth >= limits.Low && truth <= limits.High;

    private static double Share<T>(IReadOnlyCollection<T> all, Func<T, bool> which) => all.Count == 0 ? double.NaN : (double)all.Count(which) / all.Count;
}
