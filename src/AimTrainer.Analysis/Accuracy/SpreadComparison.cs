namespace AimTrainer.Analysis;

/// <summary>
/// Early against late in the session: does the bowler tire? Differences are late less early. Limits that hold 0 (or the ratio 1) say that these
/// shots cannot tell, not that nothing changed.
/// </summary>
/// <param name="Early">Which shots are early.</param>
/// <param name="Late">Which shots are late.</param>
/// <param name="EarlyShots">How many measured ones.</param>
/// <param name="LateShots">How many measured ones.</param>
/// <param name="BiasChangeBoards">Change of the mean miss; limits by Welch's t.</param>
/// <param name="SpreadRatio">Late standard deviation over early one; limits by Fisher's F, which trust a normal scatter.</param>
public sealed record SpreadComparison(
    string Early, string Late, int EarlyShots, int LateShots, BoundedEstimate BiasChangeBoards, BoundedEstimate SpreadRatio)
{
    /// <summary>From how many measured shots on either side there is a comparison.</summary>
    public const int Fewest = 8;

    /// <summary>Compares two sets of misses.</summary>
    /// <param name="earlyName">Which shots are early.</param>
    /// <param name="early">Their measures.</param>
    /// <param name="lateName">Which shots are late.</param>
    /// <param name="late">Their measures.</param>
    public static SpreadComparison Of(string earlyName, ErrorMeasures early, string lateName, ErrorMeasures late)
    {
        var (m, n) = (early.Count, late.Count);
        if (m < Fewest || n < Fewest)
        {
            var few = BoundedEstimate.Unknown($"{m} early and {n} late shots measured; known from {Fewest} on either side");
            return new SpreadComparison(earlyName, lateName, m, n, few, few);
        }

        var change = late.ConstantError!.Value - early.ConstantError!.Value;
        var (a, b) = (Variance(early), Variance(late));
        if (a == 0 || b == 0)
        {
            return new SpreadComparison(
                earlyName, lateName, m, n, BoundedEstimate.Bare(change, EstimateLimits.NoScatter), BoundedEstimate.Unknown(EstimateLimits.NoScatter));
        }

        var (ofEarly, ofLate) = (a / m, b / n);
        var freedom = (ofEarly + ofLate) * (ofEarly + ofLate) / ((ofEarly * ofEarly / (m - 1)) + (ofLate * ofLate / (n - 1)));
        var reach = EstimateLimits.TwoSidedT(freedom, BoundedEstimate.UsualConfidence) * Math.Sqrt(ofEarly + ofLate);
        var ratio = b / a;
        var tail = (1 - BoundedEstimate.UsualConfidence) / 2;
        return new SpreadComparison(
            earlyName,
            lateName,
            m,
            n,
            BoundedEstimate.Between(change, change - reach, change + reach),
            BoundedEstimate.Between(
                Math.Sqrt(ratio),
                Math.Sqrt(ratio / BetaQuantile.OfFisher(1 - tail, n - 1, m - 1)),
                Math.Sqrt(ratio / BetaQuantile.OfFisher(tail, n - 1, m - 1))));
    }

    private static double Variance(ErrorMeasures measures)
    {
        var scatter = measures.VariableError!.Value;
        return scatter * scatter * measures.Count / (measures.Count - 1);
    }
}
