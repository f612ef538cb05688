namespace AimTrainer.Analysis;

/// <summary>Whether one ball scatters more than the other: the test of Brown and Forsythe, which a few wild throws do not mislead.</summary>
/// <remarks>Source: Brown &amp; Forsythe, J. Am. Stat. Assoc. 69 (1974) 364-367: variance analysis of the distances from the own median.</remarks>
/// <param name="Ratio">Standard deviation of the second over that of the first; null when the first does not scatter.</param>
/// <param name="F">The ratio of mean squares.</param>
/// <param name="P">How often chance alone makes at least such a ratio.</param>
public sealed record SpreadTest(double? Ratio, double F, double P)
{
    /// <summary>Compares; null below 3 of each, or when nothing scatters.</summary>
    public static SpreadTest? Of(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        if (first.Count < 3 || second.Count < 3)
        {
            return null;
        }

        var (a, b) = (FromMedian(first), FromMedian(second));
        var (m, n) = (a.Length, b.Length);
        var within = (MeanDifference.Variance(a) * (m - 1)) + (MeanDifference.Variance(b) * (n - 1));
        if (within == 0)
        {
            return null;
        }

        var apart = a.Average() - b.Average();
        var ratio = apart * apart * m * n / (m + n) / (within / (m + n - 2));
        var spread = MeanDifference.Variance(first);
        return new SpreadTest(spread > 0 ? Math.Sqrt(MeanDifference.Variance(second) / spread) : null, ratio, Tails.AboveFisher(ratio, 1, m + n - 2));
    }

    internal static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    private static double[] FromMedian(IReadOnlyList<double> values)
    {
        var median = Median(values);
        return [.. values.Select(value => Math.Abs(value - median))];
    }
}
