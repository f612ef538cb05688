using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Quantiles of the beta distribution, and of Fisher's F by way of it.</summary>
public static class BetaQuantile
{
    // A bracket of doubles from 0 to 1 is down to neighbours after about this many halvings, whatever the start.
    private const int MostSteps = 1_100;

    /// <summary>The value that a beta variable stays below with probability <paramref name="p"/>.</summary>
    /// <param name="p">More than 0, less than 1.</param>
    /// <param name="a">First shape, more than 0.</param>
    /// <param name="b">Second shape, more than 0.</param>
    /// <returns>0 to 1; found by halving, so as exact as the incomplete beta function (about 1e-12, relative also near 0).</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double Of(double p, double a, double b)
    {
        if (p is not (> 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "allowed: more than 0, less than 1");
        }

        var (low, high) = (0.0, 1.0);
        for (var step = 0; step < MostSteps; step++)
        {
            // Near 0 the middle of the logarithms, so that small quantiles keep their digits.
            var middle = low > 0 && high > 4 * low ? Math.Sqrt(low * high) : (low + high) / 2;
            if (middle <= low || middle >= high)
            {
                break;
            }

            if (SpecialFunctions.RegularisedBeta(a, b, middle) < p)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return (low + high) / 2;
    }

    /// <summary>The value that the ratio of two mean squares stays below with probability <paramref name="p"/>.</summary>
    /// <param name="p">More than 0, less than 1.</param>
    /// <param name="above">Degrees of freedom of the numerator.</param>
    /// <param name="below">Degrees of freedom of the denominator.</param>
    public static double OfFisher(double p, double above, double below)
    {
        var x = Of(p, above / 2, below / 2);
        return below * x / (above * (1 - x));
    }
}
