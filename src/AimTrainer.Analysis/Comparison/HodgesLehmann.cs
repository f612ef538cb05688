namespace AimTrainer.Analysis;

/// <summary>
/// The median of all differences, with limits by ranks: a few wild throws hardly move it, and no normal scatter is needed.
/// </summary>
/// <remarks>
/// Source: Hollander &amp; Wolfe, "Nonparametric Statistical Methods" (1973). Limits are order statistics of the differences by the exact
/// distribution of the rank sum without ties; by its normal approximation where there are more than <see cref="MostExact"/> differences.
/// </remarks>
public static class HodgesLehmann
{
    /// <summary>Up to so many differences the exact distribution is used.</summary>
    public const int MostExact = 2_500;

    /// <summary>More differences than this are not worked out.</summary>
    public const int MostDifferences = 4_000_000;

    /// <summary>Of two samples: the median of all second less first.</summary>
    public static BoundedEstimate OfTwo(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        var (m, n) = (first.Count, second.Count);
        if (m == 0 || n == 0)
        {
            return BoundedEstimate.Unknown("no measured throw of one of the balls");
        }

        if ((long)m * n > MostDifferences)
        {
            return BoundedEstimate.Unknown($"more than {MostDifferences} differences");
        }

        var differences = new double[m * n];
        for (var i = 0; i < m; i++)
        {
            for (var j = 0; j < n; j++)
            {
                differences[(i * n) + j] = second[j] - first[i];
            }
        }

        var rank = m * n <= MostExact
            ? Rank(RankSums(m, n))
            : RankByNormal(m * n / 2.0, Math.Sqrt((double)m * n * (m + n + 1) / 12));
        return Limited(differences, rank);
    }

    /// <summary>Of pairs: the median of all means of two differences (a difference with itself too).</summary>
    /// <param name="differences">Second less first of each pair.</param>
    public static BoundedEstimate OfPairs(IReadOnlyList<double> differences)
    {
        var n = differences.Count;
        if (n == 0)
        {
            return BoundedEstimate.Unknown("no pair");
        }

        if ((long)n * (n + 1) / 2 > MostDifferences)
        {
            return BoundedEstimate.Unknown($"more than {MostDifferences} differences");
        }

        var means = new double[n * (n + 1) / 2];
        var at = 0;
        for (var i = 0; i < n; i++)
        {
            for (var j = i; j < n; j++)
            {
                means[at++] = (differences[i] + differences[j]) / 2;
            }
        }

        var rank = means.Length <= MostExact
            ? Rank(SignedRanks(n))
            : RankByNormal(means.Length / 2.0, Math.Sqrt(means.Length * ((2 * n) + 1) / 12.0));
        return Limited(means, rank);
    }

    private static BoundedEstimate Limited(double[] differences, int rank)
    {
        Array.Sort(differences);
        var count = differences.Length;
        var value = (differences[(count - 1) / 2] + differences[count / 2]) / 2;
        return rank < 1
            ? BoundedEstimate.Bare(value, "too few throws for limits by ranks")
            : BoundedEstimate.Between(value, differences[rank - 1], differences[count - rank]);
    }

    /// <summary>The smallest sum that is not exceeded with a probability of at least 2.5 %; 0 when even the smallest sum has more.</summary>
    private static int Rank(double[] probabilities)
    {
        var (sum, rank) = (0.0, 0);
        while (sum + probabilities[rank] < (1 - BoundedEstimate.UsualConfidence) / 2)
        {
            sum += probabilities[rank++];
        }

        return rank;
    }

    private static int RankByNormal(double mean, double deviation) =>
        (int)Math.Floor(mean - (Domain.StandardNormal.Quantile((1 + BoundedEstimate.UsualConfidence) / 2) * deviation));

    /// <summary>Probabilities of the rank sum of two samples, counted from 0.</summary>
    private static double[] RankSums(int m, int n)
    {
        // Of choosing m of m + n, weighted by sums: product of (1 - q^(n+i)) / (1 - q^i), here as partitions that fit into m by n.
        var counts = new double[(m * n) + 1];
        counts[0] = 1;
        for (var i = 1; i <= m; i++)
        {
            for (var sum = counts.Length - 1; sum >= n + i; sum--)
            {
                counts[sum] -= counts[sum - n - i];
            }

            for (var sum = i; sum < counts.Length; sum++)
            {
                counts[sum] += counts[sum - i];
            }
        }

        return Shares(counts);
    }

    /// <summary>Probabilities of the sum of the ranks with a positive sign.</summary>
    private static double[] SignedRanks(int n)
    {
        var counts = new double[(n * (n + 1) / 2) + 1];
        counts[0] = 1;
        for (var rank = 1; rank <= n; rank++)
        {
            for (var sum = counts.Length - 1; sum >= rank; sum--)
            {
                counts[sum] += counts[sum - rank];
            }
        }

        return Shares(counts);
    }

    private static double[] Shares(double[] counts)
    {
        var all = counts.Sum();
        return [.. counts.Select(count => count / all)];
    }
}
