namespace AimTrainer.Analysis;

/// <summary>The checks that every analysis of a series begins with.</summary>
internal static class TrendSeries
{
    /// <summary>The points as two arrays, in their order.</summary>
    /// <exception cref="ArgumentException">A number is not finite, or the sessions do not grow from point to point.</exception>
    public static (double[] Sessions, double[] Values) Columns(IReadOnlyList<TrendPoint> points)
    {
        var (sessions, values) = (new double[points.Count], new double[points.Count]);
        for (var i = 0; i < points.Count; i++)
        {
            (sessions[i], values[i]) = (points[i].Session, points[i].Value);
            if (!double.IsFinite(sessions[i]) || !double.IsFinite(values[i]))
            {
                throw new ArgumentException($"point {i} is ({sessions[i]}, {values[i]}); allowed: finite numbers", nameof(points));
            }

            if (i > 0 && sessions[i] <= sessions[i - 1])
            {
                throw new ArgumentException($"session {sessions[i]} follows {sessions[i - 1]}; allowed: growing, none twice", nameof(points));
            }
        }

        return (sessions, values);
    }

    /// <summary>A share strictly between 0 and 1.</summary>
    public static void CheckShare(double share, string name)
    {
        if (share is not (> 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(name, share, "allowed: more than 0, less than 1");
        }
    }

    /// <summary>The middle value of an ordered list, or the mean of the two in the middle.</summary>
    public static double MedianOfSorted(ReadOnlySpan<double> sorted)
    {
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /// <summary>Σ(v - mean)², in two passes.</summary>
    public static double SquaresAboutMean(ReadOnlySpan<double> values)
    {
        var mean = Mean(values);
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += (value - mean) * (value - mean);
        }

        return sum;
    }

    /// <summary>The mean of at least one value.</summary>
    public static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }
}
