using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>The tests at one place of the lane over the sessions, as a document has them.</summary>
/// <param name="Place">"at the arrows", "at 40 ft".</param>
/// <param name="DistanceFeet">In whole feet; null at the arrows.</param>
/// <param name="Points">The sessions' tests, oldest first.</param>
/// <param name="TooFewShots">Tests with too few shots for a point.</param>
/// <param name="Spread">Everything about the spread.</param>
/// <param name="Bias">Everything about the mean miss.</param>
/// <param name="Retention">What lasts.</param>
public sealed record TrendSeriesFigures(
    string Place, int? DistanceFeet, ValueList<TrendPointFigures> Points, ValueList<TrendPointFigures> TooFewShots, TrendFigures Spread, TrendFigures Bias,
    RetentionFigures Retention)
{
    /// <summary>The figures of a series.</summary>
    /// <param name="series">The series.</param>
    /// <param name="kinds">How many kinds of test are looked at: the rule's error is shared among them.</param>
    public static TrendSeriesFigures Of(TestSeries series, int kinds) => new(
        series.Place.ToString(),
        series.Place.Feet,
        series.Points.Select(TrendPointFigures.Of).ToValueList(),
        series.TooFewShots.Select(TrendPointFigures.Of).ToValueList(),
        TrendFigures.Of(series.Spreads, TrendScale.Logarithm, kinds, series.Freedom),
        TrendFigures.Of(series.Biases, TrendScale.AsGiven, kinds),
        RetentionFigures.Of(series.Retention));
}
