using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// What lasts from one visit to the next: start-of-session tests against the end of the session before. What a bowler can do at the
/// end of practice is not yet learned; what is still there days later is.
/// </summary>
/// <remarks>
/// Mean of the pairs' changes with t limits at 95 %. Source of the idea: the retention tests of motor-learning studies, reference
/// statistics.md section 9.
/// </remarks>
/// <param name="Pairs">All pairs, oldest first.</param>
/// <param name="MeanLogChange">Mean change of the log spread, above 0 when the spread was larger at the start; null below <see cref="FewestPairs"/>.</param>
/// <param name="LogChangeLimits">Its 95 % limits; null likewise.</param>
/// <param name="MeanBiasChangeBoards">Mean change of the mean miss; null likewise.</param>
/// <param name="BiasChangeLimits">Its 95 % limits, boards; null likewise.</param>
public sealed record Retention(
    ValueList<RetentionPair> Pairs,
    double? MeanLogChange,
    TrendLimits? LogChangeLimits,
    double? MeanBiasChangeBoards,
    TrendLimits? BiasChangeLimits)
{
    /// <summary>Fewest pairs from which anything is said.</summary>
    public const int FewestPairs = 5;

    /// <summary>Fewest graded shots of each test of a pair.</summary>
    public const int FewestShots = 10;

    /// <summary>What some pairs say.</summary>
    public static Retention Of(IEnumerable<RetentionPair> pairs)
    {
        var list = pairs.ToValueList();
        if (list.Count < FewestPairs)
        {
            return new Retention(list, null, null, null, null);
        }

        var (change, changeLimits) = MeanOf([.. list.Select(pair => pair.LogChange)]);
        var (bias, biasLimits) = MeanOf([.. list.Select(pair => pair.BiasChangeBoards)]);
        return new Retention(list, change, changeLimits, bias, biasLimits);
    }

    private static (double Mean, TrendLimits Limits) MeanOf(double[] values)
    {
        var mean = TrendSeries.Mean(values);
        var error = Math.Sqrt(TrendSeries.SquaresAboutMean(values) / (values.Length - 1) / values.Length);
        var reach = error * new StudentT(values.Length - 1).Quantile(0.975);
        return (mean, new TrendLimits(mean - reach, mean + reach));
    }
}
