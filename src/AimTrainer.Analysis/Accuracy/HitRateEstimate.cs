namespace AimTrainer.Analysis;

/// <summary>How often a target or a line was held, and how often it plausibly would be.</summary>
/// <param name="Hits">Shots that held it.</param>
/// <param name="Shots">Shots of which that is known.</param>
/// <param name="Rate">Hits / shots, 0 to 1.</param>
/// <param name="WilsonLow">Lower limit, Wilson's score interval, 95 %.</param>
/// <param name="WilsonHigh">Upper limit, Wilson's.</param>
/// <param name="JeffreysLow">Lower limit, Jeffreys' interval, 95 %.</param>
/// <param name="JeffreysHigh">Upper limit, Jeffreys'.</param>
/// <param name="Why">Why the rate is null; null when it is known.</param>
public sealed record HitRateEstimate(
    int Hits, int Shots, double? Rate, double? WilsonLow, double? WilsonHigh, double? JeffreysLow, double? JeffreysHigh, string? Why)
{
    /// <summary>The estimate of some hits of some shots; unknown when there was none.</summary>
    /// <param name="hits">0 to <paramref name="shots"/>.</param>
    /// <param name="shots">0 or more.</param>
    /// <param name="whyNone">Why there is none, when there is none.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static HitRateEstimate Of(int hits, int shots, string whyNone = EstimateLimits.NoShot)
    {
        var wilson = ProportionInterval.Wilson(hits, shots);
        var jeffreys = ProportionInterval.Jeffreys(hits, shots);
        return new HitRateEstimate(
            hits,
            shots,
            shots == 0 ? null : (double)hits / shots,
            wilson?.Low,
            wilson?.High,
            jeffreys?.Low,
            jeffreys?.High,
            shots == 0 ? whyNone : null);
    }
}
