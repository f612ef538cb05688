namespace AimTrainer.Domain;

/// <summary>
/// How often a target is hit by a bowler whose misses are normal with a known bias and spread, and how wide it must be to be hit
/// as often as wished.
/// </summary>
/// <remarks>
/// <c>P(hit) = Φ((w/2 - b)/σ) - Φ((-w/2 - b)/σ)</c>. Full doubles and not <see cref="BoardOffset"/>s: these are worked out,
/// never shown or graded as they are. Source: reference statistics.md section 2.1.
/// </remarks>
public static class HitModel
{
    /// <summary>The probability that a shot holds the target.</summary>
    /// <param name="widthBoards">Whole width of the target in boards, 0 or more.</param>
    /// <param name="biasBoards">Mean miss in boards, positive inside.</param>
    /// <param name="spreadBoards">Standard deviation of the misses in boards, more than 0.</param>
    /// <returns>0 to 1, accurate to about 1e-14.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside its range.</exception>
    public static double HitRate(double widthBoards, double biasBoards, double spreadBoards)
    {
        FixedPoint.InRange(widthBoards, 0, double.MaxValue, nameof(widthBoards));
        Check(biasBoards, spreadBoards);
        var bias = Math.Abs(biasBoards);
        return StandardNormal.Cdf(((widthBoards / 2) - bias) / spreadBoards) - StandardNormal.Cdf(((-widthBoards / 2) - bias) / spreadBoards);
    }

    /// <summary>The width that is held with a given probability.</summary>
    /// <param name="goalHitRate">More than 0, less than 1.</param>
    /// <param name="biasBoards">Mean miss in boards, positive inside.</param>
    /// <param name="spreadBoards">Standard deviation of the misses in boards, more than 0.</param>
    /// <returns>The whole width in boards, accurate to about 1e-12 of itself.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside its range.</exception>
    public static double WidthBoards(double goalHitRate, double biasBoards, double spreadBoards)
    {
        Guard.Share(goalHitRate, nameof(goalHitRate));
        Check(biasBoards, spreadBoards);
        return 2 * spreadBoards * CentralInterval.HalfWidth(default(StandardNormal), biasBoards / spreadBoards, goalHitRate);
    }

    private static void Check(double biasBoards, double spreadBoards)
    {
        FixedPoint.InRange(biasBoards, -double.MaxValue, double.MaxValue, nameof(biasBoards));
        Guard.Positive(spreadBoards, nameof(spreadBoards));
    }
}
