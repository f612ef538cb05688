namespace AimTrainer.Domain;

/// <summary>The few special functions that the sizing rules need.</summary>
public static class SpecialFunctions
{
    // From here on the asymptotic series are good to a double's last digits.
    private const double Far = 10;

    /// <summary>The natural logarithm of the gamma function.</summary>
    /// <param name="x">More than 0, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    /// <remarks>
    /// Accuracy about 1e-14, relative where the result is large and absolute near its zeros at 1 and 2. Source: Stirling's series,
    /// NIST Digital Library of Mathematical Functions 5.11.1.
    /// </remarks>
    public static double LogGamma(double x)
    {
        Guard.Positive(x, nameof(x));
        var shift = 1.0;
        while (x < Far)
        {
            shift *= x;
            x++;
        }

        return LogGammaFar(x) - Math.Log(shift);
    }

    /// <summary>The second derivative of the logarithm of the gamma function.</summary>
    /// <param name="x">More than 0, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    /// <remarks>Relative accuracy about 1e-14. Source: NIST Digital Library of Mathematical Functions 5.15.5 and 5.15.8.</remarks>
    public static double Trigamma(double x)
    {
        Guard.Positive(x, nameof(x));
        var sum = 0.0;
        while (x < Far)
        {
            sum += 1 / (x * x);
            x++;
        }

        var i = 1 / (x * x);
        var series = (1.0 / 6) - (i * ((1.0 / 30) - (i * ((1.0 / 42) - (i * ((1.0 / 30) - (i * ((5.0 / 66) - (i * ((691.0 / 2730) - (i * 7.0 / 6)))))))))));
        return sum + (1 / x) + (i / 2) + (i / x * series);
    }

    /// <summary>The regularised incomplete beta function I_x(a, b): the share of a beta distribution that lies below x.</summary>
    /// <param name="a">First shape, more than 0, finite.</param>
    /// <param name="b">Second shape, more than 0, finite.</param>
    /// <param name="x">0 to 1 inclusive.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside its range.</exception>
    /// <remarks>
    /// Absolute accuracy about 1e-13 for shapes up to some hundreds; the work grows with the root of the larger shape.
    /// Source: the continued fraction 8.17.22 of the NIST Digital Library of Mathematical Functions.
    /// </remarks>
    public static double RegularisedBeta(double a, double b, double x)
    {
        Guard.Positive(a, nameof(a));
        Guard.Positive(b, nameof(b));
        FixedPoint.InRange(x, 0, 1, nameof(x));
        return RegularisedBeta(a, b, x, 1 - x, LogGamma(a + b) - LogGamma(a) - LogGamma(b));
    }

    /// <summary>The same for a caller that knows 1 - x exactly, and -log B(a, b) from before.</summary>
    internal static double RegularisedBeta(double a, double b, double x, double oneMinusX, double logFactor)
    {
        if (x <= 0)
        {
            return 0;
        }

        if (oneMinusX <= 0)
        {
            return 1;
        }

        var front = Math.Exp(logFactor + (a * Math.Log(x)) + (b * Math.Log(oneMinusX)));

        // The fraction converges fast on this side of the mean; beyond it the other tail does.
        return x < (a + 1) / (a + b + 2)
            ? front / a * Fraction(a, b, x)
            : 1 - (front / b * Fraction(b, a, oneMinusX));
    }

    // Lentz's method.
    private static double Fraction(double a, double b, double x)
    {
        const double Tiny = 1e-300;
        const double Settled = 1e-16;
        const int MostTerms = 100_000;
        var c = 1.0;
        var d = 1 / NotZero(1 - ((a + b) * x / (a + 1)));
        var value = d;
        for (var m = 1; m <= MostTerms; m++)
        {
            var even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / NotZero(1 + (even * d));
            c = NotZero(1 + (even / c));
            value *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NotZero(1 + (odd * d));
            c = NotZero(1 + (odd / c));
            var change = d * c;
            value *= change;
            if (Math.Abs(change - 1) <= Settled)
            {
                break;
            }
        }

        return value;

        static double NotZero(double value) => Math.Abs(value) < Tiny ? Tiny : value;
    }

    private static double LogGammaFar(double x)
    {
        const double HalfLogTwoPi = 0.91893853320467274178;
        var i = 1 / (x * x);
        var series = (1.0 / 12) - (i * ((1.0 / 360) - (i * ((1.0 / 1260) - (i * ((1.0 / 1680) - (i * ((1.0 / 1188) - (i * ((691.0 / 360360) - (i / 156)))))))))));
        return ((x - 0.5) * Math.Log(x)) - x + HalfLogTwoPi + (series / x);
    }
}
