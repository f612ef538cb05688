using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>
/// Where the next shot at a target crosses, 95 times in 100, if it scatters like the shots so far: mean ± t · s · √(1 + 1/n). It is the ellipse
/// of the lane picture; only its ends across the lane mean something.
/// </summary>
/// <remarks>Source: the prediction interval of a normal sample, NIST/ISO in its standard form (from memory).</remarks>
/// <param name="LowBoard">The outer end; null when it is not known.</param>
/// <param name="HighBoard">The inner end; null likewise.</param>
/// <param name="Why">Why they are null; null when they are known.</param>
public sealed record LaneEllipse(double? LowBoard, double? HighBoard, string? Why)
{
    /// <summary>Fewest crossings: with fewer it says hardly more than that the ball stays on the lane.</summary>
    public const int Fewest = 6;

    /// <summary>The ellipse of some crossings.</summary>
    /// <param name="mean">Their mean board.</param>
    /// <param name="spread">Their standard deviation (n - 1).</param>
    /// <param name="count">How many, n.</param>
    public static LaneEllipse Of(double mean, double spread, int count)
    {
        if (count < Fewest)
        {
            return new LaneEllipse(null, null, $"{count} measured; known from {Fewest} on");
        }

        if (spread == 0)
        {
            return new LaneEllipse(null, null, EstimateLimits.NoScatter);
        }

        var reach = new StudentT(count - 1).Quantile((1 + BoundedEstimate.UsualConfidence) / 2) * spread * Math.Sqrt(1 + (1.0 / count));
        return new LaneEllipse(mean - reach, mean + reach, null);
    }
}
