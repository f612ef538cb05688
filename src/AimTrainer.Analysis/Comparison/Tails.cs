using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Probabilities of a test's figure when there is nothing to be found.</summary>
internal static class Tails
{
    /// <summary>Of a t at least so far from 0, to either side.</summary>
    public static double TwoSided(double t, double freedom) =>
        SpecialFunctions.RegularisedBeta(freedom / 2, 0.5, freedom / (freedom + (t * t)));

    /// <summary>Of a t at least so large.</summary>
    public static double Above(double t, double freedom) => t >= 0 ? TwoSided(t, freedom) / 2 : 1 - (TwoSided(t, freedom) / 2);

    /// <summary>Of an F at least so large.</summary>
    public static double AboveFisher(double ratio, double above, double below) =>
        SpecialFunctions.RegularisedBeta(below / 2, above / 2, below / (below + (above * Math.Max(0, ratio))));
}
