namespace AimTrainer.Analysis;

/// <summary>Care for many questions asked at once.</summary>
public static class Holm
{
    /// <summary>
    /// The p of each test such that, where nothing at all is to be found, any of them is below 5 % in at most 5 % of cases, however the
    /// tests hang together.
    /// </summary>
    /// <remarks>Source: Holm, Scand. J. Statist. 6 (1979) 65-70.</remarks>
    /// <param name="p">The p of each test by itself, 0 to 1.</param>
    public static double[] Adjusted(IReadOnlyList<double> p)
    {
        var order = Enumerable.Range(0, p.Count).OrderBy(i => p[i]).ToArray();
        var (result, least) = (new double[p.Count], 0.0);
        for (var i = 0; i < order.Length; i++)
        {
            least = Math.Max(least, Math.Min(1, p[order[i]] * (order.Length - i)));
            result[order[i]] = least;
        }

        return result;
    }
}
