using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Between which limits a true hit rate plausibly lies.</summary>
/// <param name="Low">Lower limit, 0 to 1.</param>
/// <param name="High">Upper limit, 0 to 1.</param>
public readonly record struct ProportionInterval(double Low, double High)
{
    /// <summary>
    /// Wilson's score interval: (p + z²/2n ± z√(p(1 - p)/n + z²/4n²)) / (1 + z²/n), with p = hits / shots. Fit for few shots: it
    /// never leaves 0 to 1, and is wide after one shot (0 of 1: 0 to 0.79).
    /// </summary>
    /// <remarks>
    /// Source: Wilson 1927, JASA 22:209-212; recommended for small n by Brown, Cai &amp; DasGupta 2001, Statistical Science 16:101-133.
    /// </remarks>
    /// <param name="hits">0 to <paramref name="shots"/>.</param>
    /// <param name="shots">0 or more.</param>
    /// <param name="confidence">More than 0, less than 1.</param>
    /// <returns>The interval; low is exactly 0 without a hit, high exactly 1 without a miss. Null when there was no shot.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ProportionInterval? Wilson(int hits, int shots, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(shots);
        ArgumentOutOfRangeException.ThrowIfNegative(hits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hits, shots);
        if (confidence is not (> 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "allowed: more than 0, less than 1");
        }

        if (shots == 0)
        {
            return null;
        }

        double n = shots;
        var z = StandardNormal.Quantile((1 + confidence) / 2);
        var rate = hits / n;
        var centre = rate + (z * z / (2 * n));
        var reach = z * Math.Sqrt((rate * (1 - rate) / n) + (z * z / (4 * n * n)));
        var scale = 1 + (z * z / n);

        // Exact at the ends, where the sum would miss by a rounding error.
        return new ProportionInterval(
            hits == 0 ? 0 : (centre - reach) / scale,
            hits == shots ? 1 : (centre + reach) / scale);
    }

    /// <summary>
    /// The equal-tailed interval of Jeffreys: the quantiles of Beta(k + ½, n - k + ½). The lower limit is 0 without a hit, the upper 1 without
    /// a miss.
    /// </summary>
    /// <remarks>Source: Brown, Cai &amp; DasGupta 2001, Statistical Science 16:101-133, who recommend it beside Wilson's for small n.</remarks>
    /// <param name="hits">0 to <paramref name="shots"/>.</param>
    /// <param name="shots">0 or more.</param>
    /// <param name="confidence">More than 0, less than 1.</param>
    /// <returns>The interval; null when there was no shot.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ProportionInterval? Jeffreys(int hits, int shots, double confidence = 0.95)
    {
        if (Wilson(hits, shots, confidence) is null)
        {
            return null;
        }

        var (a, b) = (hits + 0.5, shots - hits + 0.5);
        return new ProportionInterval(
            hits == 0 ? 0 : BetaQuantile.Of((1 - confidence) / 2, a, b),
            hits == shots ? 1 : BetaQuantile.Of((1 + confidence) / 2, a, b));
    }
}
