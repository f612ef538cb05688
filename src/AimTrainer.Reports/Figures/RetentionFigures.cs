using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>What lasts from one visit to the next, as a document has it.</summary>
/// <param name="Pairs">The last test of a visit and the first of the next, oldest first.</param>
/// <param name="MeanLogChange">Mean change of the log spread; null with too few pairs.</param>
/// <param name="LogChangeLimits">Its 95 % limits; null likewise.</param>
/// <param name="MeanBiasChangeBoards">Mean change of the mean miss; null likewise.</param>
/// <param name="BiasChangeLimits">Its 95 % limits, boards; null likewise.</param>
public sealed record RetentionFigures(
    ValueList<RetentionPairFigures> Pairs, double? MeanLogChange, TrendLimits? LogChangeLimits, double? MeanBiasChangeBoards, TrendLimits? BiasChangeLimits)
{
    /// <summary>The figures of a retention.</summary>
    public static RetentionFigures Of(Retention retention) => new(
        retention.Pairs.Select(pair => new RetentionPairFigures(pair.End.At, pair.Start.At, pair.Days, pair.LogChange, pair.BiasChangeBoards)).ToValueList(),
        retention.MeanLogChange,
        retention.LogChangeLimits,
        retention.MeanBiasChangeBoards,
        retention.BiasChangeLimits);
}
