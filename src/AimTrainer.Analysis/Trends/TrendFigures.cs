namespace AimTrainer.Analysis;

/// <summary>Everything that is worked out from one series over sessions. What the series is too short for is null.</summary>
/// <param name="Count">How many sessions have a value.</param>
/// <param name="Now">Where it stands at the newest of them; null when there is none.</param>
/// <param name="Scale">The scale of all figures but those that say "values".</param>
/// <param name="MannKendall">Whether it rises or falls; the same on both scales.</param>
/// <param name="At95">Theil-Sen trend with 95 % limits.</param>
/// <param name="AtRule">Theil-Sen trend with the limits of the rule, 99 % or more.</param>
/// <param name="OfValuesAt95">Theil-Sen trend of the values as given, 95 % limits.</param>
/// <param name="Line">Least-squares line.</param>
/// <param name="LineOfValues">Least-squares line of the values as given.</param>
/// <param name="Curves">Learning curves of the values as given.</param>
/// <param name="Shift">Where the level most looks as if it had changed.</param>
/// <param name="Ewma">Running average after a baseline of twenty sessions: a prompt.</param>
/// <param name="Cusum">Cumulative sums after that baseline: a prompt.</param>
/// <param name="NeighbourCorrelation">
/// Correlation of neighbouring sessions about the line, or about the curve where one shows. Above <see cref="NeighboursAlike"/> the limits are narrower than they should be.
/// </param>
/// <param name="Detectable">What the record could show by now.</param>
/// <param name="Rule">The looks of the rule; null for a series that is not a spread.</param>
public sealed record TrendFigures(
    int Count,
    CurrentLevel? Now,
    TrendScale Scale,
    MannKendall MannKendall,
    TheilSen? At95,
    TheilSen? AtRule,
    TheilSen? OfValuesAt95,
    StraightTrend? Line,
    StraightTrend? LineOfValues,
    LearningCurves Curves,
    LevelShift? Shift,
    EwmaChart? Ewma,
    CusumChart? Cusum,
    double? NeighbourCorrelation,
    DetectableFigures Detectable,
    ImprovementRule? Rule)
{
    /// <summary>Fewest sessions for a correlation of neighbours.</summary>
    public const int FewestForNeighbours = 12;

    /// <summary>
    /// From here on neighbouring sessions resemble one another more than chance explains: about two standard errors, 2/√n. Null below
    /// <see cref="FewestForNeighbours"/>.
    /// </summary>
    public double? NeighboursAlike => Count < FewestForNeighbours ? null : 2 / Math.Sqrt(Count);

    /// <summary>The figures of a series.</summary>
    /// <param name="points">In the order of their sessions, at most <see cref="TheilSen.MostPoints"/>; may be empty.</param>
    /// <param name="scale">On which scale it is judged.</param>
    /// <param name="kinds">How many kinds of test of this bowler are judged, 1 or more.</param>
    /// <param name="freedom">Degrees of freedom of a typical session's spread; null when not known.</param>
    /// <exception cref="ArgumentException">
    /// A number is not finite, or not above 0 where logarithms are needed; the sessions do not grow; or there are too many.
    /// </exception>
    public static TrendFigures Of(IReadOnlyList<TrendPoint> points, TrendScale scale, int kinds = 1, double? freedom = null)
    {
        var judged = scale == TrendScale.AsGiven ? points : [.. points.Select(Logarithm)];
        var confidence = ImprovementRule.ConfidenceFor(kinds);
        var curves = LearningCurves.Of(points, canBeNegative: scale == TrendScale.AsGiven);
        var (at95, atRule, line) = (TheilSen.Of(judged), TheilSen.Of(judged, confidence), StraightTrend.Of(judged));
        return new TrendFigures(
            points.Count,
            CurrentLevel.AtEnd(judged),
            scale,
            MannKendall.Of(judged),
            at95,
            atRule,
            scale == TrendScale.AsGiven ? at95 : TheilSen.Of(points),
            line,
            scale == TrendScale.AsGiven ? line : StraightTrend.Of(points),
            curves,
            LevelShift.Of(judged),
            EwmaChart.AfterBaseline(judged),
            CusumChart.AfterBaseline(judged),
            line is not null && points.Count >= FewestForNeighbours ? Neighbours(judged, Expected) : null,
            DetectableFigures.Of(points.Count, line, at95?.Slope, confidence, scale == TrendScale.Logarithm ? freedom : null),
            scale == TrendScale.Logarithm ? ImprovementRule.Of(judged, kinds) : null);

        double Expected(double session) => curves.BendAt(session) is not { } bend ? line!.At(session)
            : scale == TrendScale.Logarithm ? Math.Log(Math.Max(bend, double.Epsilon)) : bend;
    }

    private static TrendPoint Logarithm(TrendPoint point) => point.Value > 0
        ? point with { Value = Math.Log(point.Value) }
        : throw new ArgumentException($"found {point.Value} in session {point.Session}; allowed: more than 0, since a spread is judged by its logarithm");

    private static double? Neighbours(IReadOnlyList<TrendPoint> points, Func<double, double> expected)
    {
        var residuals = points.Select(point => point.Value - expected(point.Session)).ToArray();
        var products = residuals.Zip(residuals.Skip(1), (a, b) => a * b).Sum();
        var squares = residuals.Sum(residual => residual * residual);
        var scale = points.Max(point => Math.Abs(point.Value)) * 1e-12;
        return squares > residuals.Length * scale * scale ? products / squares : null;
    }
}
