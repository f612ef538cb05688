using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// Whether a series rises or falls, whatever its shape: the Mann-Kendall test. S counts pairs that rise less pairs that fall.
/// </summary>
/// <remarks>
/// Source: Gilbert 1987, Statistical Methods for Environmental Pollution Monitoring, section 16.4: exact for up to ten values, the
/// normal with continuity correction above. The exact part counts all orders of the values there are, so that ties are exact too
/// (the number of inversions of a multiset has the Gaussian multinomial coefficients). Values near in time that resemble one another
/// make the test reject too often; the slope and its limits say more than the p-value.
/// </remarks>
/// <param name="Count">How many values, n.</param>
/// <param name="S">Rising pairs less falling pairs.</param>
/// <param name="VarianceOfS">Its variance when nothing changes, corrected for ties.</param>
/// <param name="Z">(S - sign S) / √variance; 0 when S is 0. Null when all values are equal, or there are fewer than two.</param>
/// <param name="PNormal">Two-sided, from Z. Null when Z is.</param>
/// <param name="PExact">Two-sided, from all orders of the values; null above ten values, or when Z is.</param>
/// <param name="TauB">Kendall's rank correlation with the order of the sessions, corrected for ties. Null when Z is.</param>
public sealed record MannKendall(int Count, long S, double VarianceOfS, double? Z, double? PNormal, double? PExact, double? TauB)
{
    /// <summary>Most values for which the exact distribution is used.</summary>
    public const int MostExact = 10;

    /// <summary>The better of the two: exact where there is one.</summary>
    public double? P => PExact ?? PNormal;

    /// <summary>The test of a series; each value against every one before it.</summary>
    /// <param name="points">In the order of their sessions; may be empty.</param>
    /// <exception cref="ArgumentException">A number is not finite, or the sessions do not grow.</exception>
    public static MannKendall Of(IReadOnlyList<TrendPoint> points)
    {
        var (_, values) = TrendSeries.Columns(points);
        var s = 0L;
        for (var i = 0; i < values.Length; i++)
        {
            for (var j = i + 1; j < values.Length; j++)
            {
                s += Math.Sign(values[j].CompareTo(values[i]));
            }
        }

        Array.Sort(values);
        var ties = Ties(values);
        var variance = Variance(values.Length, ties);
        if (variance <= 0)
        {
            return new MannKendall(values.Length, s, 0, null, null, null, null);
        }

        var z = (s - Math.Sign(s)) / Math.Sqrt(variance);
        var pairs = values.Length * (values.Length - 1.0) / 2;
        var tied = ties.Sum(t => t * (t - 1.0) / 2);
        return new MannKendall(
            values.Length,
            s,
            variance,
            z,
            Math.Min(1, 2 * StandardNormal.Cdf(-Math.Abs(z))),
            values.Length <= MostExact ? Exact(values.Length, ties, Math.Abs(s)) : null,
            s / Math.Sqrt(pairs * (pairs - tied)));
    }

    /// <summary>The variance of S when nothing changes.</summary>
    internal static double Variance(int count, IEnumerable<int> ties)
    {
        double n = count;
        return ((n * (n - 1) * ((2 * n) + 5)) - ties.Sum(t => t * (t - 1.0) * ((2.0 * t) + 5))) / 18;
    }

    /// <summary>How often each value of a sorted list is there.</summary>
    internal static List<int> Ties(ReadOnlySpan<double> sorted)
    {
        var ties = new List<int>();
        for (var i = 0; i < sorted.Length; i++)
        {
            if (i > 0 && sorted[i] == sorted[i - 1])
            {
                ties[^1]++;
            }
            else
            {
                ties.Add(1);
            }
        }

        return ties;
    }

    // S = untied pairs - 2 inversions. The orders of a multiset by inversions are the product of Gaussian binomials, one a group.
    private static double Exact(int count, List<int> ties, long size)
    {
        double[] orders = [1];
        var placed = 0;
        foreach (var tie in ties)
        {
            orders = Product(orders, GaussianBinomial(placed, tie));
            placed += tie;
        }

        var untied = (count * (count - 1) / 2) - ties.Sum(t => t * (t - 1) / 2);
        var (far, all) = (0.0, 0.0);
        for (var inversions = 0; inversions < orders.Length; inversions++)
        {
            all += orders[inversions];
            far += Math.Abs(untied - (2 * inversions)) >= size ? orders[inversions] : 0;
        }

        return far / all;
    }

    // Coefficient k counts the ways to weave `more` equal items into `placed` others so that k pairs stand the wrong way round.
    private static double[] GaussianBinomial(int placed, int more)
    {
        var ways = new double[placed + 1][];
        for (var others = 0; others <= placed; others++)
        {
            ways[others] = [1];
        }

        for (var item = 1; item <= more; item++)
        {
            for (var others = 1; others <= placed; others++)
            {
                // The last of all is one of the new items, or one of the others, which then stands behind all `item` new ones.
                var last = new double[(others * item) + 1];
                Add(last, ways[others], 0);
                Add(last, ways[others - 1], item);
                ways[others] = last;
            }
        }

        return ways[placed];
    }

    private static void Add(double[] sum, double[] terms, int shift)
    {
        for (var k = 0; k < terms.Length; k++)
        {
            sum[k + shift] += terms[k];
        }
    }

    private static double[] Product(double[] a, double[] b)
    {
        var product = new double[a.Length + b.Length - 1];
        for (var i = 0; i < a.Length; i++)
        {
            for (var j = 0; j < b.Length; j++)
            {
                product[i + j] += a[i] * b[j];
            }
        }

        return product;
    }
}
