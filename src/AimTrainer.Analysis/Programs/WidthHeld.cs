using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// The narrowest width that a bowler holds more often than not. Only shots of test blocks count, at least <see cref="FewestShots"/> of
/// one place, the newest <see cref="MostShots"/>: held by |miss| at most half the width, and the lower 95 % limit of that share (Wilson) at
/// one half or more.
/// </summary>
/// <param name="Boards">The width; null when none of <see cref="Widths"/> is held, or too few shots are known.</param>
/// <param name="Rate">The share at that width; at the widest when none is held.</param>
/// <param name="Shots">Test shots whose crossing is known.</param>
public sealed record WidthHeld(double? Boards, HitRateEstimate Rate, int Shots)
{
    /// <summary>Fewest test shots.</summary>
    public const int FewestShots = 30;

    /// <summary>The newest so many are looked at.</summary>
    public const int MostShots = 100;

    private const double Half = 0.5;

    /// <summary>The widths that are given a badge, boards, widest first.</summary>
    public static ValueList<double> Widths { get; } = [7, 5, 3, 2, 1];

    /// <summary>What some test shots show.</summary>
    /// <param name="misses">Their misses in boards, newest first, of one place.</param>
    public static WidthHeld Of(IEnumerable<double> misses)
    {
        double[] newest = [.. misses.Take(MostShots)];
        if (newest.Length < FewestShots)
        {
            return new WidthHeld(null, HitRateEstimate.Of(0, 0, "too few test shots"), newest.Length);
        }

        WidthHeld? narrowest = null;
        foreach (var width in Widths)
        {
            var rate = HitRateEstimate.Of(newest.Count(miss => Math.Abs(miss) <= width / 2), newest.Length);
            if (rate.WilsonLow < Half)
            {
                return narrowest ?? new WidthHeld(null, rate, newest.Length);
            }

            narrowest = new WidthHeld(width, rate, newest.Length);
        }

        return narrowest!;
    }
}
