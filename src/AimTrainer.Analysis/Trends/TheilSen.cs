using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// The straight trend that a few wild sessions cannot bend: the median of the slopes of all pairs, with limits from the ranks.
/// </summary>
/// <remarks>
/// Source: Sen 1968, JASA 63:1379-1389; limits as Gilbert 1987, section 16.4, interpolated between ordered slopes: with N slopes and
/// C = z √(variance of S), the ranks (N - C)/2 and (N + C)/2 + 1.
/// </remarks>
/// <param name="Slope">Change of the value for each session.</param>
/// <param name="Intercept">Median value less slope times median session.</param>
/// <param name="Confidence">Of the limits, 0 to 1.</param>
/// <param name="Low">Lower limit of the slope. Null when there are too few values for one at this confidence, or all are equal.</param>
/// <param name="High">Upper limit of the slope; null when the lower is.</param>
/// <param name="LowAtRank">The ordered slope nearest to the lower rank, without interpolation, as Sen and many programs give it; null likewise.</param>
/// <param name="HighAtRank">The ordered slope nearest to the upper rank; null likewise.</param>
public sealed record TheilSen(
    double Slope, double Intercept, double Confidence, double? Low, double? High, double? LowAtRank, double? HighAtRank)
{
    /// <summary>Most points: the slopes of all pairs are kept in memory and sorted, at every look of the rule anew.</summary>
    public const int MostPoints = 1_000;

    /// <summary>Whether the limits leave out zero, and on which side the slope then lies: -1 below, 1 above, 0 when zero is among them.</summary>
    public int Side => this switch
    {
        { High: < 0 } => -1,
        { Low: > 0 } => 1,
        _ => 0,
    };

    /// <summary>The line's value at a session.</summary>
    public double At(double session) => Intercept + (Slope * session);

    /// <summary>The trend of a series; null below two points, which have no slope.</summary>
    /// <param name="points">In the order of their sessions, at most <see cref="MostPoints"/>.</param>
    /// <param name="confidence">More than 0, less than 1.</param>
    /// <exception cref="ArgumentException">Too many points, a number that is not finite, or sessions that do not grow.</exception>
    public static TheilSen? Of(IReadOnlyList<TrendPoint> points, double confidence = 0.95)
    {
        TrendSeries.CheckShare(confidence, nameof(confidence));
        if (points.Count > MostPoints)
        {
            throw new ArgumentException($"found {points.Count} points; allowed: at most {MostPoints}", nameof(points));
        }

        var (sessions, values) = TrendSeries.Columns(points);
        var n = values.Length;
        if (n < 2)
        {
            return null;
        }

        var slopes = new double[n * (n - 1) / 2];
        var next = 0;
        for (var i = 0; i < n; i++)
        {
            for (var j = i + 1; j < n; j++)
            {
                slopes[next++] = (values[j] - values[i]) / (sessions[j] - sessions[i]);
            }
        }

        Array.Sort(slopes);
        Array.Sort(values);
        var slope = TrendSeries.MedianOfSorted(slopes);
        var intercept = TrendSeries.MedianOfSorted(values) - (slope * TrendSeries.MedianOfSorted(sessions));
        var reach = StandardNormal.Quantile((1 + confidence) / 2) * Math.Sqrt(MannKendall.Variance(n, MannKendall.Ties(values)));
        var rank = (slopes.Length - reach) / 2;
        if (!(reach > 0 && rank >= 1))
        {
            return new TheilSen(slope, intercept, confidence, null, null, null, null);
        }

        var (low, high) = ((int)Math.Round(rank), (int)Math.Round(slopes.Length - rank) + 1);
        return new TheilSen(
            slope, intercept, confidence, AtRank(slopes, rank), AtRank(slopes, slopes.Length + 1 - rank), slopes[low - 1],
            slopes[Math.Min(high, slopes.Length) - 1]);
    }

    // Ranks count from 1 and may lie between two.
    private static double AtRank(double[] sorted, double rank)
    {
        var below = Math.Min((int)rank, sorted.Length - 1);
        return sorted[below - 1] + ((rank - below) * (sorted[below] - sorted[below - 1]));
    }
}
