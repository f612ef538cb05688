namespace AimTrainer.Analysis.Tests;

/// <summary>Series for tests.</summary>
internal static class Series
{
    /// <summary>Source: mk.holycross: Little, "A Mann-Kendall Example (By Hand)", Holy Cross; fourteen yearly values.</summary>
    public static double[] HolyCross { get; } = [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7];

    /// <summary>Source: learn.session24: an invented series of variable errors over 24 sessions.</summary>
    public static double[] TwentyFour { get; } =
    [
        3.1, 2.86, 2.71, 2.55, 2.49, 2.31, 2.3, 2.13, 2.17, 2.02, 1.98, 1.99, 1.86, 1.9, 1.79, 1.82, 1.74, 1.78, 1.7, 1.73, 1.69, 1.66, 1.7, 1.63,
    ];

    /// <summary>Points with the sessions counted from <paramref name="first"/>.</summary>
    public static TrendPoint[] Of(double[] values, double first = 1) => [.. values.Select((value, i) => new TrendPoint(first + i, value))];

    /// <summary>Points with their sessions given.</summary>
    public static TrendPoint[] Of(double[] sessions, double[] values) => [.. sessions.Zip(values, (session, value) => new TrendPoint(session, value))];
}
