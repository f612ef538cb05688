using MathNet.Numerics.Distributions;

namespace AimTrainer.Analysis;

/// <summary>Quantiles of the standard normal distribution.</summary>
public static class NormalQuantile
{
    /// <summary>The z below which a share of the distribution lies: 0.975 gives 1.96.</summary>
    /// <param name="share">More than 0, less than 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or not between 0 and 1.</exception>
    public static double Of(double share) => share is > 0 and < 1
        ? Normal.InvCDF(0, 1, share)
        : throw new ArgumentOutOfRangeException(nameof(share), share, "allowed: more than 0, less than 1");
}
