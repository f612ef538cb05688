namespace AimTrainer.Analysis;

/// <summary>
/// Where the paths of many shots come together: what the bowler really aims at. d* = -covariance of laydown and slope / variance of slope. A
/// negative or far distance with wide limits says that laydown and angle do not make up for each other anywhere in sight.
/// </summary>
/// <param name="Feet">Feet past the foul line; limits by Student's t (the distance is a regression slope with its sign turned).</param>
/// <param name="SpreadThereBoards">Standard deviation of the straight paths there, the smallest anywhere.</param>
public sealed record AimDistance(BoundedEstimate Feet, double? SpreadThereBoards)
{
    /// <summary>The aim distance of co-moments of laydown and slope.</summary>
    /// <param name="moments">Laydown (boards) first, slope (boards a foot) second.</param>
    /// <param name="noise">What the readings' errors add, in square boards; null to take nothing out.</param>
    public static AimDistance Of(CoMoments moments, ReadingNoise? noise)
    {
        if (moments.Count < VarianceShares.Fewest || MomentRegression.Of(moments, 0, [1]) is not { } fit)
        {
            return new AimDistance(
                BoundedEstimate.Unknown(
                    moments.Count < VarianceShares.Fewest
                        ? $"{moments.Count} split shots; known from {VarianceShares.Fewest} on"
                        : "all shots leave at the same angle, so that their paths meet nowhere"),
                null);
        }

        var off = noise ?? default;
        var rawSlope = moments.Covariance(1, 1);
        var slope = rawSlope - off.Slope;
        var both = moments.Covariance(0, 1) - off.LaydownSlope;
        var laydown = moments.Covariance(0, 0) - off.Laydown;
        if (slope <= 0)
        {
            return new AimDistance(BoundedEstimate.Unknown("below measurement noise: the angles scatter no more than the readings do"), null);
        }

        var raw = fit.Slopes[0];
        return new AimDistance(
            BoundedEstimate.Between(-Of(raw.Value!.Value), -Of(raw.High!.Value), -Of(raw.Low!.Value)),
            Math.Sqrt(Math.Max(0, laydown - (both * both / slope))));

        double Of(double value) => ((value * rawSlope) - off.LaydownSlope) / slope;
    }
}
