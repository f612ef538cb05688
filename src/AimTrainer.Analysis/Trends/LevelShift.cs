namespace AimTrainer.Analysis;

/// <summary>The one place where a series most looks as if its level had changed, by least squares.</summary>
/// <remarks>
/// Called found only when the BIC of two levels is lower by more than 6 than that of one, and at least four sessions lie on each
/// side: in 48 sessions without any change that happens once to about 0.5 % of single looks (statistics.md section 4.8). A steady
/// change looks like a shift too; <see cref="AgainstLine"/> says which of the two describes it better.
/// </remarks>
/// <param name="After">How many sessions lie before the shift.</param>
/// <param name="LastBefore">The last session before it.</param>
/// <param name="MeanBefore">Mean of the values before.</param>
/// <param name="MeanAfter">Mean of the values after.</param>
/// <param name="SquaresOfOne">Sum of squares about one mean.</param>
/// <param name="SquaresOfTwo">Sum of squares about the two means.</param>
/// <param name="BicGain">BIC of one level less BIC of two: the place of the shift counts as a parameter.</param>
/// <param name="AgainstLine">BIC of a straight line less that of two levels: above 0 the shift describes the series better.</param>
/// <param name="Found">Whether the shift is called one.</param>
public sealed record LevelShift(
    int After,
    double LastBefore,
    double MeanBefore,
    double MeanAfter,
    double SquaresOfOne,
    double SquaresOfTwo,
    double BicGain,
    double AgainstLine,
    bool Found)
{
    /// <summary>Fewest sessions on each side.</summary>
    public const int FewestOnASide = 4;

    /// <summary>The most likely shift of a series; null below eight points.</summary>
    /// <exception cref="ArgumentException">A number is not finite, or the sessions do not grow.</exception>
    public static LevelShift? Of(IReadOnlyList<TrendPoint> points)
    {
        var (sessions, values) = TrendSeries.Columns(points);
        var n = values.Length;
        if (n < 2 * FewestOnASide)
        {
            return null;
        }

        var (after, least) = (FewestOnASide, double.PositiveInfinity);
        for (var split = FewestOnASide; split <= n - FewestOnASide; split++)
        {
            var squares = TrendSeries.SquaresAboutMean(values.AsSpan(0, split)) + TrendSeries.SquaresAboutMean(values.AsSpan(split));
            if (squares < least)
            {
                (after, least) = (split, squares);
            }
        }

        var one = TrendSeries.SquaresAboutMean(values);
        var scale = values.Max(Math.Abs);
        var two = InformationCriteria.Of(n, least, 3, scale).Bayes;
        var gain = InformationCriteria.Of(n, one, 1, scale).Bayes - two;
        var line = InformationCriteria.Of(n, StraightTrend.Of(sessions, values)!.ResidualSquares, 2, scale).Bayes;
        return new LevelShift(
            after, sessions[after - 1], TrendSeries.Mean(values.AsSpan(0, after)), TrendSeries.Mean(values.AsSpan(after)), one, least, gain,
            line - two, gain > InformationCriteria.Clearly);
    }
}
