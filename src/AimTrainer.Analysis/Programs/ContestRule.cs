using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// Contests that a beginner can win against an expert. Only shots of test blocks count, before and in the contest.
/// </summary>
/// <remarks>
/// By target held: each throws at a width of her own, twice the middle (median) size of her misses in the newest tests before the contest.
/// Half of her shots hold that width when she throws as before, whatever her level; the larger share wins. By own improvement: the spread in
/// the contest / the spread before, the smaller wins. The wins of a contest are luck for the most part; the limits beside each say so.
/// </remarks>
public static class ContestRule
{
    /// <summary>Fewest test shots before the contest.</summary>
    public const int FewestBefore = 30;

    /// <summary>So many of the newest are taken.</summary>
    public const int MostBefore = 100;

    /// <summary>Fewest shots in the contest.</summary>
    public const int FewestIn = 10;

    /// <summary>The places by target held, the best first, those without a rank last.</summary>
    public static ValueList<ContestPlace> ByHeld(IEnumerable<ContestEntry> entries) => Ranked(entries, descending: true, entry =>
    {
        double[] sizes = [.. entry.MissesBefore.Take(MostBefore).Select(Math.Abs).Order()];
        var width = 2 * TrendSeries.MedianOfSorted(sizes);
        var rate = HitRateEstimate.Of(entry.MissesIn.Count(miss => Math.Abs(miss) <= width / 2), entry.MissesIn.Count);
        return new ContestPlace(entry.Bowler, null, rate.Rate, width, rate.WilsonLow, rate.WilsonHigh, entry.MissesIn.Count, null);
    });

    /// <summary>The places by own improvement, the best first, those without a rank last.</summary>
    public static ValueList<ContestPlace> ByImprovement(IEnumerable<ContestEntry> entries) => Ranked(entries, descending: false, entry =>
    {
        double[] before = [.. entry.MissesBefore.Take(MostBefore)];
        double[] now = [.. entry.MissesIn];
        var (one, other) = (TrendSeries.SquaresAboutMean(before) / (before.Length - 1), TrendSeries.SquaresAboutMean(now) / (now.Length - 1));
        if (one == 0 || other == 0)
        {
            return new ContestPlace(entry.Bowler, null, null, Math.Sqrt(one), null, null, now.Length, "the readings are too coarse: no scatter");
        }

        // Source: the F interval for a ratio of variances, NIST/SEMATECH e-Handbook of Statistical Methods, section 7.3.2.
        var ratio = other / one;
        var (low, high) = (ratio / BetaQuantile.OfFisher(0.975, now.Length - 1, before.Length - 1), ratio * BetaQuantile.OfFisher(0.975, before.Length - 1, now.Length - 1));
        return new ContestPlace(entry.Bowler, null, Math.Sqrt(ratio), Math.Sqrt(one), Math.Sqrt(low), Math.Sqrt(high), now.Length, null);
    });

    private static ValueList<ContestPlace> Ranked(IEnumerable<ContestEntry> entries, bool descending, Func<ContestEntry, ContestPlace> place)
    {
        var places = entries.Select(entry => WhyNot(entry) is { } why ? new ContestPlace(entry.Bowler, null, null, null, null, null, entry.MissesIn.Count, why) : place(entry)).ToList();
        var known = places.Where(one => one.Value is not null).OrderBy(one => descending ? -one.Value!.Value : one.Value!.Value).ThenBy(one => one.Bowler, StringComparer.OrdinalIgnoreCase).ToList();
        return known.Select(one => one with { Rank = 1 + known.Count(other => descending ? other.Value > one.Value : other.Value < one.Value) })
            .Concat(places.Where(one => one.Value is null).OrderBy(one => one.Bowler, StringComparer.OrdinalIgnoreCase)).ToValueList();
    }

    private static string? WhyNot(ContestEntry entry) =>
        entry.MissesBefore.Count < FewestBefore
            ? string.Create(CultureInfo.InvariantCulture, $"{entry.MissesBefore.Count} of {FewestBefore} test shots before the contest: no width of the bowler's own yet")
            : entry.MissesIn.Count < FewestIn ? string.Create(CultureInfo.InvariantCulture, $"{entry.MissesIn.Count} of {FewestIn} test shots in the contest") : null;
}
