namespace AimTrainer.Domain;

/// <summary>
/// How far a value stands out from a sample, in a measure that the outliers themselves cannot hide in: deviation from the median
/// over a scale made of the median deviation.
/// </summary>
/// <remarks>Source: Iglewicz and Hoaglin, "How to Detect and Handle Outliers" (1993), by way of reference statistics.md section 8.</remarks>
public static class ModifiedZ
{
    /// <summary>Beyond this size, to either side, a value is called an outlier.</summary>
    public const double Cut = 3.5;

    /// <summary>With fewer values than this nothing is called an outlier.</summary>
    public const int FewestValues = 8;

    /// <summary>The normal's median absolute deviation, in standard deviations.</summary>
    public const double MedianDeviationOfNormal = 0.6745;

    /// <summary>The normal's standard deviation, in mean absolute deviations.</summary>
    public const double MeanDeviationToSpread = 1.253314;

    /// <summary>The modified z of one value against a sample.</summary>
    /// <param name="value">Finite.</param>
    /// <param name="sample">At least one value; in any order, all finite. It need not hold <paramref name="value"/>.</param>
    /// <param name="leastMedianDeviation">
    /// What the median absolute deviation is at least taken to be where more than half of the sample is tied (whole-board readings):
    /// half the step of the readings; 0 for none.
    /// </param>
    /// <returns>
    /// Signed. Where the median deviation is 0 the mean absolute deviation takes its place (times 1.253314). Where that is 0 too, and no
    /// least deviation is given, 0 for the tied value itself and an infinity for any other.
    /// </returns>
    /// <exception cref="ArgumentException">The sample is empty.</exception>
    public static double Of(double value, ReadOnlySpan<double> sample, double leastMedianDeviation = 0)
    {
        if (sample.IsEmpty)
        {
            throw new ArgumentException("found an empty sample; allowed: at least one value", nameof(sample));
        }

        Span<double> work = sample.Length <= 128 ? stackalloc double[sample.Length] : new double[sample.Length];
        sample.CopyTo(work);
        var median = SortedMedian(work);
        var mean = 0.0;
        for (var i = 0; i < work.Length; i++)
        {
            work[i] = Math.Abs(sample[i] - median);
            mean += work[i] / work.Length;
        }

        var deviation = value - median;
        var medianDeviation = SortedMedian(work);
        if (medianDeviation > 0)
        {
            return MedianDeviationOfNormal * deviation / medianDeviation;
        }

        var scale = Math.Max(MeanDeviationToSpread * mean, leastMedianDeviation / MedianDeviationOfNormal);
        return deviation == 0 ? 0 : deviation / scale;
    }

    private static double SortedMedian(Span<double> values)
    {
        values.Sort();
        var middle = values.Length / 2;
        return values.Length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
