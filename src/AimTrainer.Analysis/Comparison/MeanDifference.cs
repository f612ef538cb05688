using System.Text.Json.Serialization;

namespace AimTrainer.Analysis;

/// <summary>A difference of two means.</summary>
/// <param name="Difference">Second less first, with 95 % limits.</param>
/// <param name="StandardError">Its standard error; null when it is not known.</param>
/// <param name="Freedom">Degrees of freedom; null when it is not known.</param>
/// <param name="P">How often chance alone makes at least such a difference, to either side; null when it is not known.</param>
public sealed record MeanDifference(BoundedEstimate Difference, double? StandardError, double? Freedom, double? P)
{
    /// <summary>Whether there is anything to judge by.</summary>
    [JsonIgnore]
    public bool IsKnown => P is not null;

    /// <summary>Not known, and why.</summary>
    public static MeanDifference Unknown(string why) => new(BoundedEstimate.Unknown(why), null, null, null);

    /// <summary>From an estimate, its error and degrees of freedom.</summary>
    /// <param name="value">The difference.</param>
    /// <param name="error">Its standard error, more than 0.</param>
    /// <param name="freedom">Degrees of freedom, more than 0.</param>
    public static MeanDifference From(double value, double error, double freedom)
    {
        var reach = EstimateLimits.TwoSidedT(freedom, BoundedEstimate.UsualConfidence) * error;
        return new MeanDifference(BoundedEstimate.Between(value, value - reach, value + reach), error, freedom, Tails.TwoSided(value / error, freedom));
    }

    /// <summary>Welch's comparison of two samples whose spreads need not be equal.</summary>
    /// <param name="first">The values that are taken away.</param>
    /// <param name="second">The values from which they are taken.</param>
    /// <remarks>Source: Welch, Biometrika 34 (1947) 28-35.</remarks>
    public static MeanDifference Welch(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        if (first.Count == 0 || second.Count == 0)
        {
            return Unknown("no measured throw of one of the balls");
        }

        var value = second.Average() - first.Average();
        if (first.Count < 2 || second.Count < 2)
        {
            return new MeanDifference(BoundedEstimate.Bare(value, "one throw tells nothing of the scatter; limits from 2 of each ball on"), null, null, null);
        }

        var (a, b) = (Variance(first) / first.Count, Variance(second) / second.Count);
        return a + b == 0
            ? new MeanDifference(BoundedEstimate.Bare(value, EstimateLimits.NoScatter), null, null, null)
            : From(value, Math.Sqrt(a + b), (a + b) * (a + b) / ((a * a / (first.Count - 1)) + (b * b / (second.Count - 1))));
    }

    /// <summary>Student's comparison of pairs.</summary>
    /// <param name="differences">Second less first of each pair.</param>
    /// <remarks>Source: Student, Biometrika 6 (1908) 1-25.</remarks>
    public static MeanDifference Paired(IReadOnlyList<double> differences)
    {
        if (differences.Count == 0)
        {
            return Unknown("no pair");
        }

        var value = differences.Average();
        if (differences.Count < 2)
        {
            return new MeanDifference(BoundedEstimate.Bare(value, "one pair tells nothing of the scatter; limits from 2 on"), null, null, null);
        }

        var variance = Variance(differences);
        return variance == 0
            ? new MeanDifference(BoundedEstimate.Bare(value, EstimateLimits.NoScatter), null, null, null)
            : From(value, Math.Sqrt(variance / differences.Count), differences.Count - 1);
    }

    internal static double Variance(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        return values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1);
    }
}
