using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>The tests of a bowler at one place of the lane, one point a visit.</summary>
/// <param name="Place">Where.</param>
/// <param name="Points">The visits with at least <see cref="FewestShots"/> graded test shots there, oldest first.</param>
/// <param name="TooFewShots">Visits whose test had fewer: shown, and used for nothing.</param>
/// <param name="Retention">Start of a visit against the end of the one before.</param>
public sealed record TestSeries(TestPlace Place, ValueList<TestPoint> Points, ValueList<TestPoint> TooFewShots, Retention Retention)
{
    /// <summary>Fewest graded shots of a point.</summary>
    public const int FewestShots = 15;

    /// <summary>The spread in boards by session, counted from 1, as trends take it.</summary>
    public IReadOnlyList<TrendPoint> Spreads => [.. Points.Select((point, i) => new TrendPoint(i + 1, Math.Exp(point.LogSpread)))];

    /// <summary>The mean miss in boards by session, counted from 1.</summary>
    public IReadOnlyList<TrendPoint> Biases => [.. Points.Select((point, i) => new TrendPoint(i + 1, point.BiasBoards))];

    /// <summary>Degrees of freedom of a typical point; null when there is none.</summary>
    public double? Freedom => Points.Count == 0 ? null : TrendSeries.MedianOfSorted([.. Points.Select(point => (double)point.Freedom).Order()]);
}
