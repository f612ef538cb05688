using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// What the error of the readings adds to the variances of a shot's parts, for readings with independent errors of standard deviation 1 board.
/// </summary>
/// <remarks>
/// Source: JCGM 100:2008 (GUM) 5.2.2, equation 13: laydown, slope and rest are weighted sums of the readings, so their variances and covariances
/// are sums of products of the weights.
/// </remarks>
/// <param name="Laydown">Variance of the laydown.</param>
/// <param name="Slope">Variance of the slope, per square foot.</param>
/// <param name="LaydownSlope">Their covariance, per foot.</param>
/// <param name="Rest">Variance of crossing less straight line at the target.</param>
/// <param name="LaydownRest">Covariance of laydown and rest.</param>
/// <param name="SlopeRest">Covariance of slope and rest, per foot.</param>
public readonly record struct ReadingNoise(double Laydown, double Slope, double LaydownSlope, double Rest, double LaydownRest, double SlopeRest)
{
    /// <summary>The noise of a shot's parts at a target.</summary>
    /// <param name="line">How the straight line was found.</param>
    /// <param name="target">The target and its crossing.</param>
    /// <returns>Null when the line rests on a reported angle, whose error is not that of a board.</returns>
    public static ReadingNoise? Of(StraightLine line, ObservedTarget target)
    {
        if (line.From == StraightSource.PlaceAndReportedAngle)
        {
            return null;
        }

        var readings = line.Readings.AsSpan();
        var mean = 0.0;
        foreach (var reading in readings)
        {
            mean += reading.Distance.Value / readings.Length;
        }

        var along = 0.0;
        foreach (var reading in readings)
        {
            along += (reading.Distance.Value - mean) * (reading.Distance.Value - mean);
        }

        var distance = target.Distance.Value;
        var (laydown, slope, both, rest, laydownRest, slopeRest) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        var own = -1;
        for (var i = 0; i < readings.Length; i++)
        {
            // The target's crossing is one of the readings that the line was fitted to: then its error is in both.
            if (own < 0 && readings[i].Distance.ApartFrom(target.Distance) <= Crossings.MeasuredWithinFeet && readings[i].Board == target.Board)
            {
                own = i;
            }
        }

        for (var i = 0; i < readings.Length; i++)
        {
            var b = (readings[i].Distance.Value - mean) / along;
            var a = (1.0 / readings.Length) - (mean * b);
            var c = (i == own ? 1 : 0) - a - (distance * b);
            laydown += a * a;
            slope += b * b;
            both += a * b;
            rest += c * c;
            laydownRest += a * c;
            slopeRest += b * c;
        }

        return new ReadingNoise(laydown, slope, both, rest + (own < 0 ? 1 : 0), laydownRest, slopeRest);
    }

    /// <summary>The noise of two lots together.</summary>
    public static ReadingNoise operator +(ReadingNoise left, ReadingNoise right) => new(
        left.Laydown + right.Laydown,
        left.Slope + right.Slope,
        left.LaydownSlope + right.LaydownSlope,
        left.Rest + right.Rest,
        left.LaydownRest + right.LaydownRest,
        left.SlopeRest + right.SlopeRest);

    /// <summary>The noise times a factor.</summary>
    public static ReadingNoise operator *(ReadingNoise noise, double factor) => new(
        noise.Laydown * factor, noise.Slope * factor, noise.LaydownSlope * factor, noise.Rest * factor, noise.LaydownRest * factor, noise.SlopeRest * factor);
}
