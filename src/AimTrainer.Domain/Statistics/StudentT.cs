namespace AimTrainer.Domain;

/// <summary>Student's t distribution, in its standard form (place 0, scale 1).</summary>
public readonly record struct StudentT : ICentredDistribution
{
    // Beyond this many degrees of freedom a normal approximation is as exact as the fraction, and its cost does not grow.
    private const double NearlyNormal = 200;

    private readonly double _logBetaFactor;

    /// <summary>Makes the distribution.</summary>
    /// <param name="freedom">Degrees of freedom: more than 0, finite, not necessarily whole.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public StudentT(double freedom)
    {
        const double LogGammaOfHalf = 0.57236494292470008707;
        Freedom = freedom;
        _logBetaFactor = SpecialFunctions.LogGamma((freedom / 2) + 0.5) - SpecialFunctions.LogGamma(freedom / 2) - LogGammaOfHalf;
    }

    /// <summary>Degrees of freedom.</summary>
    public double Freedom { get; }

    /// <summary>Density at <paramref name="t"/>.</summary>
    public double Density(double t) =>
        Math.Exp(_logBetaFactor - ((Freedom + 1) / 2 * LogOfOnePlus(t * t / Freedom))) / Math.Sqrt(Freedom);

    /// <summary>Probability of a value up to <paramref name="t"/>.</summary>
    /// <remarks>
    /// Absolute accuracy about 1e-13. Through the incomplete beta function up to 200 degrees of freedom; beyond, through the
    /// normalising series of Hill, "Algorithm 395: Student's t-distribution", Communications of the ACM 13 (1970).
    /// </remarks>
    public double Cdf(double t)
    {
        if (Freedom > NearlyNormal)
        {
            return StandardNormal.Cdf(Math.CopySign(NormalLike(t), t));
        }

        var square = t * t;
        var whole = Freedom + square;
        var within = SpecialFunctions.RegularisedBeta(0.5, Freedom / 2, square / whole, Freedom / whole, _logBetaFactor);
        return 0.5 + Math.CopySign(0.5 * within, t);
    }

    /// <summary>The value that is not exceeded with probability <paramref name="p"/>.</summary>
    /// <param name="p">More than 0, less than 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    /// <remarks>Relative accuracy about 1e-12 for p from 0.001 to 0.999, falling to about 1e-8 at 1e-7 from either end.</remarks>
    public double Quantile(double p)
    {
        if (!(p > 0 && p < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "allowed: more than 0, less than 1");
        }

        var share = Math.Abs((2 * p) - 1);
        return share == 0 ? 0 : Math.CopySign(CentralInterval.HalfWidth(this, 0, share), p - 0.5);
    }

    double ICentredDistribution.CdfAt(double x) => Cdf(x);

    double ICentredDistribution.DensityAt(double x) => Density(x);

    private double NormalLike(double t)
    {
        var a = Freedom - 0.5;
        var b = 48 * a * a;
        var y = a * LogOfOnePlus(t * t / Freedom);
        return ((((((((-0.4 * y) - 3.3) * y) - 24) * y) - 85.5) / ((0.8 * y * y) + 100 + b) + y + 3) / b + 1) * Math.Sqrt(y);
    }

    // log(1 + x) that keeps the digits of a small x. Source: Goldberg, "What every computer scientist should know about
    // floating-point arithmetic", ACM Computing Surveys 23 (1991), theorem 4.
    private static double LogOfOnePlus(double x)
    {
        var sum = 1 + x;
        return sum == 1 ? x : x * Math.Log(sum) / (sum - 1);
    }
}
