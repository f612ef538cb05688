using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// A running average that leans on the newest sessions (exponentially weighted moving average) with limits: a prompt to look, never a
/// claim. Textbook false-alarm rates hold for a known mean and spread; from a short baseline they are far worse.
/// </summary>
/// <remarks>Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4. The limits are those for many sessions.</remarks>
/// <param name="Weight">Weight of the newest value, 0 to 1.</param>
/// <param name="Centre">Mean of the baseline.</param>
/// <param name="Spread">Standard deviation of the baseline.</param>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit.</param>
/// <param name="Averages">After each value.</param>
/// <param name="Signals">Which of them, from 0, lie outside the limits.</param>
public sealed record EwmaChart(
    double Weight, double Centre, double Spread, double Low, double High, ValueList<double> Averages, ValueList<int> Signals)
{
    /// <summary>Fewest sessions from which a baseline is made.</summary>
    public const int FewestOfBaseline = 20;

    /// <summary>The usual weight of the newest value.</summary>
    public const double UsualWeight = 0.3;

    /// <summary>How many standard deviations the limits lie away.</summary>
    public const double UsualReach = 3;

    /// <summary>Whether the newest average lies outside the limits.</summary>
    public bool IsOutside => Signals.Count > 0 && Signals[^1] == Averages.Count - 1;

    /// <summary>The chart of values against a baseline.</summary>
    /// <param name="values">In order.</param>
    /// <param name="centre">Mean of the baseline.</param>
    /// <param name="spread">Standard deviation of the baseline, 0 or more.</param>
    /// <param name="weight">More than 0, less than 1.</param>
    /// <param name="reach">Standard deviations from centre to limit, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static EwmaChart Of(IEnumerable<double> values, double centre, double spread, double weight = UsualWeight, double reach = UsualReach)
    {
        TrendSeries.CheckShare(weight, nameof(weight));
        ArgumentOutOfRangeException.ThrowIfNegative(spread);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(reach);
        var width = reach * spread * Math.Sqrt(weight / (2 - weight));
        var (averages, signals, average) = (new List<double>(), new List<int>(), centre);
        foreach (var value in values)
        {
            average = (weight * value) + ((1 - weight) * average);
            if (average < centre - width || average > centre + width)
            {
                signals.Add(averages.Count);
            }

            averages.Add(average);
        }

        return new EwmaChart(weight, centre, spread, centre - width, centre + width, averages.ToValueList(), signals.ToValueList());
    }

    /// <summary>
    /// The chart of a series whose first <see cref="FewestOfBaseline"/> values are the baseline; it begins after them. Null without any
    /// value after the baseline, or when the baseline has no spread.
    /// </summary>
    public static EwmaChart? AfterBaseline(IReadOnlyList<TrendPoint> points) =>
        ControlBaseline.Of(points, FewestOfBaseline) is { } baseline ? Of(baseline.Rest, baseline.Mean, baseline.Spread) : null;
}
