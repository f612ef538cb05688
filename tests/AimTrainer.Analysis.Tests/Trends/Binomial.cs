using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

/// <summary>How likely so few, or so many, of a number of trials are.</summary>
internal static class Binomial
{
    /// <summary>P(at most <paramref name="count"/> of <paramref name="trials"/>).</summary>
    public static double AtMost(int count, int trials, double p) =>
        count >= trials ? 1 : SpecialFunctions.RegularisedBeta(trials - count, count + 1, 1 - p);

    /// <summary>P(at least <paramref name="count"/> of <paramref name="trials"/>).</summary>
    public static double AtLeast(int count, int trials, double p) => count == 0 ? 1 : 1 - AtMost(count - 1, trials, p);
}
