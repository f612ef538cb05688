using MathNet.Numerics.Distributions;

namespace AimTrainer.Analysis;

/// <summary>Limits of means and spreads of values that scatter normally, and the words for what cannot be said.</summary>
public static class EstimateLimits
{
    /// <summary>Why nothing is known of nothing.</summary>
    public const string NoShot = "no measured shot; known from 1 on";

    /// <summary>Why one shot has no spread.</summary>
    public const string OneShot = "one measured shot tells nothing of the scatter; known from 2 on";

    /// <summary>Why there are no limits when all readings agree.</summary>
    public const string NoScatter = "all readings are the same, so they are too coarse or too few for limits";

    /// <summary>
    /// A mean with its limits by Student's t: mean ± t · s / √n, n - 1 degrees of freedom.
    /// </summary>
    /// <param name="mean">The mean; not used when <paramref name="count"/> is 0.</param>
    /// <param name="deviation">Standard deviation with n - 1, 0 or more; not used below two.</param>
    /// <param name="count">How many, n.</param>
    /// <param name="confidence">More than 0, less than 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static BoundedEstimate OfMean(double mean, double deviation, int count, double confidence = BoundedEstimate.UsualConfidence)
    {
        Check(count, confidence);
        if (count < 2 || deviation == 0)
        {
            return count == 0 ? BoundedEstimate.Unknown(NoShot) : BoundedEstimate.Bare(mean, count == 1 ? OneShot : NoScatter);
        }

        var reach = TwoSidedT(count - 1, confidence) * deviation / Math.Sqrt(count);
        return BoundedEstimate.Between(mean, mean - reach, mean + reach);
    }

    /// <summary>
    /// A standard deviation with its limits by chi-square: s√(ν / χ²) at both ends. They lean to the high side, and are wide: 0.69 to 1.83
    /// times s at ten shots.
    /// </summary>
    /// <param name="deviation">Standard deviation with n - 1, 0 or more; not used below two.</param>
    /// <param name="count">How many, n.</param>
    /// <param name="confidence">More than 0, less than 1.</param>
    /// <param name="freedom">Degrees of freedom; n - 1 when null.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static BoundedEstimate OfSpread(
        double deviation, int count, double confidence = BoundedEstimate.UsualConfidence, double? freedom = null)
    {
        Check(count, confidence);
        if (count < 2)
        {
            return BoundedEstimate.Unknown(count == 0 ? "no measured shot; known from 2 on" : OneShot);
        }

        if (deviation == 0)
        {
            return BoundedEstimate.Bare(0, NoScatter);
        }

        var degrees = freedom ?? count - 1;
        return BoundedEstimate.Between(
            deviation,
            deviation * Math.Sqrt(degrees / ChiSquared.InvCDF(degrees, (1 + confidence) / 2)),
            deviation * Math.Sqrt(degrees / ChiSquared.InvCDF(degrees, (1 - confidence) / 2)));
    }

    /// <summary>
    /// The spread that is left when a known variance (rounding, a sensor's noise) is taken out. Never below 0: then the spread cannot be told
    /// from that noise.
    /// </summary>
    /// <param name="spread">As measured, with limits.</param>
    /// <param name="variance">The variance to be taken out, 0 or more.</param>
    public static BoundedEstimate Without(BoundedEstimate spread, double variance)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(variance);
        if (spread.Value is not { } value)
        {
            return spread;
        }

        var left = (value * value) - variance;
        var result = new BoundedEstimate(Math.Sqrt(Math.Max(0, left)), Rest(spread.Low), Rest(spread.High), spread.Why);
        return left > 0 ? result : result with { Why = "below measurement noise: the shots scatter no more than the readings do" };

        double? Rest(double? limit) => limit is { } known ? Math.Sqrt(Math.Max(0, (known * known) - variance)) : null;
    }

    /// <summary>Student's t that is exceeded on both sides together with probability 1 - confidence.</summary>
    internal static double TwoSidedT(double freedom, double confidence) => new Domain.StudentT(freedom).Quantile((1 + confidence) / 2);

    internal static void Check(int count, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        if (confidence is not (> 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "allowed: more than 0, less than 1");
        }
    }
}
