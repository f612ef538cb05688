using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// Who needs the coach, from what was measured alone. The first ten and the last ten shots of a session at one place are held against one
/// another: the spread grew when the ratio of the variances is beyond what chance gives in one of forty sessions (the lower limit of a 95 %
/// interval by Fisher's F is above 1). Tired means that and slower throws as well (95 % limits of the difference of means below 0, Welch).
/// Off pace means that the next shot takes more than three times the bowler's usual time and more than three minutes.
/// </summary>
/// <remarks>
/// Source: the F interval for a ratio of variances and Welch's interval, NIST/SEMATECH e-Handbook of Statistical Methods, sections 7.3.2 and
/// 7.3.1. Ten and ten shots, three times and three minutes: common practice. No load is worked out from any of it.
/// </remarks>
public static class NeedRule
{
    /// <summary>Shots of each end of the session.</summary>
    public const int Each = 10;

    /// <summary>Fewest shots of one place whose miss is known before anything is said of the spread.</summary>
    public const int FewestShots = 2 * Each;

    /// <summary>Fewest times between shots before anything is said of the pace.</summary>
    public const int FewestGaps = 5;

    private const double TimesUsual = 3, LeastMinutes = 3;

    /// <summary>What the shots of a session say.</summary>
    /// <param name="shots">The shots that count, in order.</param>
    /// <param name="sore">Whether the bowler said that something is sore.</param>
    /// <param name="hasTurn">Whether the next shot is the bowler's: else nobody waits for it.</param>
    /// <param name="now">The time.</param>
    public static BowlerNeed Of(IReadOnlyList<PulseShot> shots, bool sore, bool hasTurn, DateTimeOffset now)
    {
        var spread = Spread(shots);
        var speed = Speed(shots);
        double[] gaps = [.. shots.Zip(shots.Skip(1), (one, next) => (next.At - one.At).TotalMinutes).Where(gap => gap > 0).Order()];
        double? usual = gaps.Length >= FewestGaps ? TrendSeries.MedianOfSorted(gaps) : null;
        double? since = shots.Count > 0 ? Math.Max(0, (now - shots[^1].At).TotalMinutes) : null;
        var reasons = new List<NeedKind>();
        if (sore)
        {
            reasons.Add(NeedKind.Sore);
        }

        if (spread.Low > 1)
        {
            reasons.Add(speed.High < 0 ? NeedKind.Tired : NeedKind.SpreadGrowing);
        }

        if (hasTurn && since > LeastMinutes && since > TimesUsual * usual)
        {
            reasons.Add(NeedKind.OffPace);
        }

        return new BowlerNeed(reasons.ToValueList(), spread, speed, since, usual);
    }

    /// <summary>The order in which a coach goes to lanes: the most pressing reason first, then the larger ratio of spreads; those with nothing last.</summary>
    public static IComparer<BowlerNeed> MostPressingFirst { get; } = Comparer<BowlerNeed>.Create((one, other) =>
    {
        var byReason = Rank(one).CompareTo(Rank(other));
        return byReason != 0 ? byReason : (other.SpreadRatio.Value ?? 0).CompareTo(one.SpreadRatio.Value ?? 0);
    });

    private static int Rank(BowlerNeed need) => need.Reasons.Count == 0 ? int.MaxValue : (int)need.Reasons[0];

    private static BoundedEstimate Spread(IReadOnlyList<PulseShot> shots)
    {
        var place = shots.GroupBy(shot => shot.Place).Select(group => group.Where(shot => shot.MissBoards is not null).Select(shot => shot.MissBoards!.Value).ToArray())
            .OrderByDescending(misses => misses.Length).FirstOrDefault() ?? [];
        if (place.Length < FewestShots)
        {
            return BoundedEstimate.Unknown(string.Create(CultureInfo.InvariantCulture, $"{place.Length} of {FewestShots} shots with a known crossing at one place"));
        }

        var (early, late) = (Variance(place.AsSpan(0, Each)), Variance(place.AsSpan(place.Length - Each)));
        if (early == 0 || late == 0)
        {
            return BoundedEstimate.Unknown("the readings are too coarse: no scatter in ten shots");
        }

        var ratio = late / early;
        var reach = BetaQuantile.OfFisher(0.975, Each - 1, Each - 1);
        return BoundedEstimate.Between(Math.Sqrt(ratio), Math.Sqrt(ratio / reach), Math.Sqrt(ratio * reach));
    }

    private static BoundedEstimate Speed(IReadOnlyList<PulseShot> shots)
    {
        double[] speeds = [.. shots.Select(shot => shot.SpeedMph).OfType<double>()];
        if (speeds.Length < FewestShots)
        {
            return BoundedEstimate.Unknown(speeds.Length == 0 ? "speed is not measured" : string.Create(CultureInfo.InvariantCulture, $"{speeds.Length} of {FewestShots} shots with a known speed"));
        }

        var (early, late) = (speeds.AsSpan(0, Each).ToArray(), speeds.AsSpan(speeds.Length - Each).ToArray());
        var (one, other) = (Variance(early) / Each, Variance(late) / Each);
        var change = TrendSeries.Mean(late) - TrendSeries.Mean(early);
        if (one + other == 0)
        {
            return BoundedEstimate.Bare(change, "no scatter in ten shots");
        }

        // Welch-Satterthwaite, rounded down to whole degrees of freedom: the wider limits.
        var freedom = (one + other) * (one + other) / (((one * one) + (other * other)) / (Each - 1));
        var reach = new StudentT(Math.Max(1, (int)Math.Floor(freedom))).Quantile(0.975) * Math.Sqrt(one + other);
        return BoundedEstimate.Between(change, change - reach, change + reach);
    }

    private static double Variance(ReadOnlySpan<double> values) => TrendSeries.SquaresAboutMean(values) / (values.Length - 1);
}
