using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// Figures that a few gross misses cannot spoil, and which misses those are: a misread or a slip widens an ordinary spread by half. A gross
/// miss is flagged and asked about, never taken out silently: every other figure has it in.
/// </summary>
/// <remarks>
/// Source: Iglewicz &amp; Hoaglin, "How to Detect and Handle Outliers" (1993): modified z beyond 3.5. Where more than half of the misses are the
/// same (whole boards) the mean absolute deviation takes the place of the median one.
/// </remarks>
/// <param name="MedianBoards">Median miss, positive inside; limits by ranks (exact for any distribution, from 6 shots on).</param>
/// <param name="MedianDeviationBoards">Median distance from the median. Null without a shot.</param>
/// <param name="SpreadBoards">
/// The standard deviation that a normal scatter of this median deviation has. Limits are approximate (its logarithm scatters by 1.166 / √n).
/// </param>
/// <param name="ByMeanDeviation">Whether the median deviation was 0 and the mean one was used.</param>
/// <param name="GrossMisses">How many misses are gross; null when there are too few shots to say.</param>
/// <param name="GrossBelowBoards">A miss below this is gross; null when that is not known.</param>
/// <param name="GrossAboveBoards">A miss above this is gross; null when that is not known.</param>
/// <param name="WithoutGross">The plain measures of the other misses; null when there are too few shots to say which are gross.</param>
/// <param name="Why">Why something is null; null when nothing is.</param>
public sealed record RobustAccuracy(
    BoundedEstimate MedianBoards,
    double? MedianDeviationBoards,
    BoundedEstimate SpreadBoards,
    bool ByMeanDeviation,
    int? GrossMisses,
    double? GrossBelowBoards,
    double? GrossAboveBoards,
    ErrorMeasures? WithoutGross,
    string? Why)
{
    // Asymptotic standard error of the logarithm of a normal's median absolute deviation, times √n: 1 / (4 · 0.6745 · φ(0.6745)).
    private const double LogErrorOfMedianDeviation = 1.1664;

    /// <summary>Whether a miss is one of the gross ones; null when that cannot be said.</summary>
    public bool? IsGross(BoardOffset miss) => GrossBelowBoards is { } low && GrossAboveBoards is { } high
        ? miss.Boards < low || miss.Boards > high
        : null;

    /// <summary>The figures of a histogram.</summary>
    /// <param name="misses">The misses.</param>
    /// <param name="stepBoards">The step of the readings when it is known: half of it is the least that the median deviation is taken to be.</param>
    internal static RobustAccuracy Of(MissHistogram misses, double? stepBoards)
    {
        var count = misses.Count;
        if (count == 0)
        {
            var none = BoundedEstimate.Unknown(EstimateLimits.NoShot);
            return new RobustAccuracy(none, null, none, false, null, null, null, null, EstimateLimits.NoShot);
        }

        var (boards, times) = misses.Sorted();
        var median = MissHistogram.Median(boards, times, count);
        var (apart, apartTimes) = Apart(boards, times, median);
        var medianDeviation = MissHistogram.Median(apart, apartTimes, count);
        var meanDeviation = 0.0;
        for (var i = 0; i < apart.Length; i++)
        {
            meanDeviation += apart[i] * apartTimes[i] / count;
        }

        var byMean = medianDeviation == 0;
        var scale = byMean
            ? Math.Max(ModifiedZ.MeanDeviationToSpread * meanDeviation, (stepBoards ?? 0) / 2 / ModifiedZ.MedianDeviationOfNormal)
            : medianDeviation / ModifiedZ.MedianDeviationOfNormal;
        var spread = byMean ? ModifiedZ.MeanDeviationToSpread * meanDeviation : scale;
        var few = count < ModifiedZ.FewestValues ? $"{count} measured; gross misses are told from {ModifiedZ.FewestValues} on" : null;
        if (few is not null)
        {
            return new RobustAccuracy(MedianWithLimits(boards, times, count, median), medianDeviation, SpreadWithLimits(spread, count), byMean, null, null, null, null, few);
        }

        // All the same, and no step known: nothing can be called gross, and nothing needs to be.
        var reach = scale > 0 ? ModifiedZ.Cut * scale : 0;
        var (kept, gross) = (new ErrorAccumulator(), 0);
        foreach (var (miss, number) in misses.All())
        {
            if (miss.Boards < median - reach || miss.Boards > median + reach)
            {
                gross += number;
            }
            else
            {
                kept.Add(miss, number);
            }
        }

        return new RobustAccuracy(
            MedianWithLimits(boards, times, count, median),
            medianDeviation,
            SpreadWithLimits(spread, count),
            byMean,
            gross,
            median - reach,
            median + reach,
            kept.Result,
            null);
    }

    private static (double[] Apart, int[] Times) Apart(double[] boards, int[] times, double median)
    {
        var apart = boards.Select(value => Math.Abs(value - median)).ToArray();
        var counts = times.ToArray();
        Array.Sort(apart, counts);
        return (apart, counts);
    }

    private static BoundedEstimate SpreadWithLimits(double spread, int count)
    {
        if (count < ModifiedZ.FewestValues)
        {
            return count < 2
                ? BoundedEstimate.Unknown(EstimateLimits.OneShot)
                : BoundedEstimate.Bare(spread, $"{count} measured; limits from {ModifiedZ.FewestValues} on");
        }

        var factor = Math.Exp(StandardNormal.Quantile((1 + BoundedEstimate.UsualConfidence) / 2) * LogErrorOfMedianDeviation / Math.Sqrt(count));
        return spread > 0
            ? BoundedEstimate.Between(spread, spread / factor, spread * factor)
            : BoundedEstimate.Bare(0, EstimateLimits.NoScatter);
    }

    private static BoundedEstimate MedianWithLimits(double[] boards, int[] times, int count, double median)
    {
        // The largest k with P(fewer than k of n below the median) of at most half of what may lie outside. By the incomplete beta
        // function: P(binomial(n, ½) <= k - 1) = 1 - I_½(k, n - k + 1).
        var outside = (1 - BoundedEstimate.UsualConfidence) / 2;
        var (low, high) = (0, (count + 1) / 2);
        while (low < high)
        {
            var k = (low + high + 1) / 2;
            if (1 - SpecialFunctions.RegularisedBeta(k, count - k + 1, 0.5) <= outside)
            {
                low = k;
            }
            else
            {
                high = k - 1;
            }
        }

        return low == 0
            ? BoundedEstimate.Bare(median, $"{count} measured; limits from 6 on")
            : BoundedEstimate.Between(median, MissHistogram.OfRank(boards, times, low), MissHistogram.OfRank(boards, times, count + 1 - low));
    }
}
