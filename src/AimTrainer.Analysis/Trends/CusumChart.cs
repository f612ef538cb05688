using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// Sums of what values exceed, or fall short of, a target by more than a slack: finds small lasting shifts. A prompt to look, never a
/// claim, as <see cref="EwmaChart"/> is.
/// </summary>
/// <remarks>Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.3.</remarks>
/// <param name="Target">What values are held against.</param>
/// <param name="Slack">What is forgiven at each value (k).</param>
/// <param name="Limit">Beyond it a sum signals (h).</param>
/// <param name="Above">The upper sum after each value.</param>
/// <param name="Below">The lower sum after each value.</param>
/// <param name="FirstSignal">The first value, from 0, at which a sum is beyond the limit; null when none is.</param>
public sealed record CusumChart(double Target, double Slack, double Limit, ValueList<double> Above, ValueList<double> Below, int? FirstSignal)
{
    /// <summary>The usual slack, in standard deviations of the baseline.</summary>
    public const double UsualSlack = 0.5;

    /// <summary>The usual limit, in standard deviations of the baseline.</summary>
    public const double UsualLimit = 5;

    /// <summary>Whether one of the newest sums lies beyond the limit.</summary>
    public bool IsOutside => Above.Count > 0 && Math.Max(Above[^1], Below[^1]) > Limit;

    /// <summary>The chart of values.</summary>
    /// <param name="values">In order.</param>
    /// <param name="target">What they are held against.</param>
    /// <param name="slack">0 or more.</param>
    /// <param name="limit">0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static CusumChart Of(IEnumerable<double> values, double target, double slack, double limit)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(slack);
        ArgumentOutOfRangeException.ThrowIfNegative(limit);
        var (aboves, belows, above, below) = (new List<double>(), new List<double>(), 0.0, 0.0);
        int? signal = null;
        foreach (var value in values)
        {
            above = Math.Max(0, above + value - target - slack);
            below = Math.Max(0, below + target - slack - value);
            signal ??= above > limit || below > limit ? aboves.Count : null;
            aboves.Add(above);
            belows.Add(below);
        }

        return new CusumChart(target, slack, limit, aboves.ToValueList(), belows.ToValueList(), signal);
    }

    /// <summary>The chart of what follows the baseline of a series; null as for <see cref="EwmaChart.AfterBaseline"/>.</summary>
    public static CusumChart? AfterBaseline(IReadOnlyList<TrendPoint> points) =>
        ControlBaseline.Of(points, EwmaChart.FewestOfBaseline) is { } baseline
            ? Of(baseline.Rest, baseline.Mean, UsualSlack * baseline.Spread, UsualLimit * baseline.Spread)
            : null;
}
