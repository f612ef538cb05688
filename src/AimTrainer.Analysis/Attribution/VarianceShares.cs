namespace AimTrainer.Analysis;

/// <summary>
/// How much of the scatter at a target each cause makes up. The covariances are shown, not hidden: shares add up to 1, and a negative share
/// means that this part made up for the others (compensation).
/// </summary>
/// <remarks>
/// share = covariance of the part with the miss, over the variance of the miss: the slope of the part on the miss. Its limits are those of such a
/// slope by Student's t (exact for normal scatter).
/// </remarks>
/// <param name="MissVariance">Variance of the misses, square boards, n - 1.</param>
/// <param name="LaydownVariance">Variance of the laydown part.</param>
/// <param name="AngleVariance">Variance of the angle part at this distance.</param>
/// <param name="BeyondVariance">Variance of what the ball did beyond the straight line.</param>
/// <param name="TwiceLaydownAngle">Twice the covariance of laydown and angle part.</param>
/// <param name="TwiceLaydownBeyond">Twice the covariance of laydown part and movement.</param>
/// <param name="TwiceAngleBeyond">Twice the covariance of angle part and movement.</param>
/// <param name="LaydownShare">Share of the laydown.</param>
/// <param name="AngleShare">Share of the angle.</param>
/// <param name="BeyondShare">Share of what the ball did.</param>
public sealed record VarianceShares(
    double MissVariance,
    double LaydownVariance,
    double AngleVariance,
    double BeyondVariance,
    double TwiceLaydownAngle,
    double TwiceLaydownBeyond,
    double TwiceAngleBeyond,
    BoundedEstimate LaydownShare,
    BoundedEstimate AngleShare,
    BoundedEstimate BeyondShare)
{
    /// <summary>From how many split shots on there are shares.</summary>
    public const int Fewest = 4;

    /// <summary>The shares of co-moments of laydown, slope and rest at a distance.</summary>
    /// <param name="moments">Laydown (boards), slope (boards a foot), rest (boards), in this order.</param>
    /// <param name="feet">The distance of the target.</param>
    /// <param name="noise">What the readings' errors add, in square boards; null to take nothing out.</param>
    /// <returns>Null when there are too few shots, the misses do not scatter, or no more than the readings do.</returns>
    public static VarianceShares? Of(CoMoments moments, double feet, ReadingNoise? noise)
    {
        if (moments.Count < Fewest)
        {
            return null;
        }

        var off = noise ?? default;
        var (raw, parts) = (new double[3, 3], new double[3, 3]);
        double[] weight = [1, feet, 1];
        double[,] added =
        {
            { off.Laydown, off.LaydownSlope, off.LaydownRest },
            { off.LaydownSlope, off.Slope, off.SlopeRest },
            { off.LaydownRest, off.SlopeRest, off.Rest },
        };
        var (rawMiss, miss) = (0.0, 0.0);
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                raw[i, j] = weight[i] * weight[j] * moments.Covariance(i, j);
                parts[i, j] = raw[i, j] - (weight[i] * weight[j] * added[i, j]);
                rawMiss += raw[i, j];
                miss += parts[i, j];
            }
        }

        if (!(miss > 0 && rawMiss > 0))
        {
            return null;
        }

        return new VarianceShares(
            miss,
            Math.Max(0, parts[0, 0]),
            Math.Max(0, parts[1, 1]),
            Math.Max(0, parts[2, 2]),
            2 * parts[0, 1],
            2 * parts[0, 2],
            2 * parts[1, 2],
            Share(0),
            Share(1),
            Share(2));

        BoundedEstimate Share(int part)
        {
            var rawCovariance = raw[part, 0] + raw[part, 1] + raw[part, 2];
            var slope = rawCovariance / rawMiss;
            var rest = Math.Max(0, raw[part, part] - (slope * rawCovariance));
            var error = Math.Sqrt(rest * (moments.Count - 1) / (moments.Count - 2) / rawMiss / (moments.Count - 1));
            var reach = EstimateLimits.TwoSidedT(moments.Count - 2, BoundedEstimate.UsualConfidence) * error;

            // Taking the noise out moves and stretches the slope and its limits alike.
            var taken = rawCovariance - (parts[part, 0] + parts[part, 1] + parts[part, 2]);
            return BoundedEstimate.Between(Of(slope), Of(slope - reach), Of(slope + reach));

            double Of(double value) => ((value * rawMiss) - taken) / miss;
        }
    }
}
