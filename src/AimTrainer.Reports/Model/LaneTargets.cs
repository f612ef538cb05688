using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>Puts crossings together by the place they were thrown at.</summary>
internal static class LaneTargets
{
    /// <summary>The places, those with most known crossings first; of equals the one thrown at last.</summary>
    /// <param name="crossings">Newest shot first.</param>
    /// <param name="lane">Whose boards.</param>
    public static ValueList<LaneTarget> Of(IReadOnlyList<PracticeCrossing> crossings, LaneProfile lane)
    {
        var settings = new AccuracySettings { Lane = lane };
        return crossings.GroupBy(crossing => (crossing.DistanceFeet, crossing.CentreBoard))
            .Select(place => Target([.. place], settings))
            .OrderByDescending(target => target.Measured).ToValueList();
    }

    private static LaneTarget Target(List<PracticeCrossing> newestFirst, AccuracySettings settings)
    {
        var newest = newestFirst[0];
        var accumulator = new TargetAccuracyAccumulator(newest.Target, settings);
        for (var i = newestFirst.Count - 1; i >= 0; i--)
        {
            accumulator.Add(ReportShot.TargetOf(newestFirst[i]));
        }

        var accuracy = accumulator.Result;
        var robust = accuracy.Robust;
        var (meanKept, spreadKept) = WithoutGross(robust);
        var known = newestFirst.AsEnumerable().Reverse().Where(crossing => crossing is { CrossingBoard: not null, MissBoards: not null })
            .Select(crossing => new LaneCrossing(crossing.At, crossing.CrossingBoard!.Value, crossing.MissBoards!.Value, crossing.Held)
            {
                Gross = robust.IsGross(BoardOffset.FromBoards(crossing.MissBoards!.Value)) == true,
                Test = crossing.Kind == BlockKind.Test,
            }).ToValueList();
        return new LaneTarget(
            newest.Target,
            newest.DistanceFeet,
            newest.CentreBoard,
            newest.WidthBoards,
            newestFirst.Exists(crossing => crossing.WidthBoards != newest.WidthBoards),
            accuracy.Shots,
            accuracy.Measured,
            known.AsEnumerable().Count(crossing => crossing.Held == true),
            accuracy.ConstantErrorBoards,
            accuracy.StandardDeviationBoards,
            LaneEllipse.Of(
                newest.CentreBoard + ((meanKept ?? accuracy.ConstantErrorBoards).Value ?? 0),
                (spreadKept ?? accuracy.StandardDeviationBoards).Value ?? 0,
                meanKept is null ? accuracy.Measured : accuracy.Measured - (robust.GrossMisses ?? 0)),
            known)
        {
            MeanMissWithoutGrossBoards = meanKept,
            SpreadWithoutGrossBoards = spreadKept,
        };
    }

    private static (BoundedEstimate? Mean, BoundedEstimate? Spread) WithoutGross(RobustAccuracy robust)
    {
        // Gross misses are told from 8 shots on and lie beyond the middle half: several are always left.
        if (robust is not { GrossMisses: > 0 and var gross, WithoutGross: { ConstantError: { } mean, VariableError: { } scatter, Count: var count } } || !GrossShare.MayBeSetAside(gross, gross + count))
        {
            return (null, null);
        }

        var deviation = scatter * Math.Sqrt(count / (count - 1.0));
        return (EstimateLimits.OfMean(mean, deviation, count), EstimateLimits.OfSpread(deviation, count));
    }
}
