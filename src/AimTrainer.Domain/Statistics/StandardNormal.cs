namespace AimTrainer.Domain;

/// <summary>The normal distribution with mean 0 and standard deviation 1.</summary>
public readonly record struct StandardNormal : ICentredDistribution
{
    private const double OneOverRootTwoPi = 0.39894228040143267794;
    private const double OneOverRootPi = 0.56418958354775628695;

    /// <summary>Density at <paramref name="x"/>.</summary>
    public static double Density(double x) => OneOverRootTwoPi * Math.Exp(-0.5 * x * x);

    /// <summary>Probability of a value up to <paramref name="x"/>.</summary>
    /// <remarks>Relative accuracy about 1e-14, in the lower tail too (down to about x = -37).</remarks>
    public static double Cdf(double x) => 0.5 * Erfc(-x / Math.Sqrt(2));

    /// <summary>The value that is not exceeded with probability <paramref name="p"/>.</summary>
    /// <param name="p">0 to 1 inclusive; the ends give the infinities.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    /// <remarks>
    /// Relative accuracy about 1e-15. Source: Wichura, "Algorithm AS 241: the percentage points of the normal distribution",
    /// Applied Statistics 37 (1988), routine PPND16.
    /// </remarks>
    public static double Quantile(double p)
    {
        FixedPoint.InRange(p, 0, 1, nameof(p));
        var q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
        {
            var near = 0.180625 - (q * q);
            return q * Ratio(
                near,
                [
                    2.5090809287301226727e+3, 3.3430575583588128105e+4, 6.7265770927008700853e+4, 4.5921953931549871457e+4,
                    1.3731693765509461125e+4, 1.9715909503065514427e+3, 1.3314166789178437745e+2, 3.3871328727963666080e+0,
                ],
                [
                    5.2264952788528545610e+3, 2.8729085735721942674e+4, 3.9307895800092710610e+4, 2.1213794301586595867e+4,
                    5.3941960214247511077e+3, 6.8718700749205790830e+2, 4.2313330701600911252e+1, 1,
                ]);
        }

        var tail = q < 0 ? p : 1 - p;
        if (tail == 0)
        {
            return q < 0 ? double.NegativeInfinity : double.PositiveInfinity;
        }

        var r = Math.Sqrt(-Math.Log(tail));
        var size = r <= 5
            ? Ratio(
                r - 1.6,
                [
                    7.74545014278341407640e-4, 2.27238449892691845833e-2, 2.41780725177450611770e-1, 1.27045825245236838258e+0,
                    3.64784832476320460504e+0, 5.76949722146069140550e+0, 4.63033784615654529590e+0, 1.42343711074968357734e+0,
                ],
                [
                    1.05075007164441684324e-9, 5.47593808499534494600e-4, 1.51986665636164571966e-2, 1.48103976427480074590e-1,
                    6.89767334985100004550e-1, 1.67638483018380384940e+0, 2.05319162663775882187e+0, 1,
                ])
            : Ratio(
                r - 5,
                [
                    2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.24266094738807843860e-3, 2.65321895265761230930e-2,
                    2.96560571828504891230e-1, 1.78482653991729133580e+0, 5.46378491116411436990e+0, 6.65790464350110377720e+0,
                ],
                [
                    2.04426310338993978564e-15, 1.42151175831644588870e-7, 1.84631831751005468180e-5, 7.86869131145613259100e-4,
                    1.48753612908506148525e-2, 1.36929880922735805310e-1, 5.99832206555887937690e-1, 1,
                ]);
        return q < 0 ? -size : size;
    }

    double ICentredDistribution.CdfAt(double x) => Cdf(x);

    double ICentredDistribution.DensityAt(double x) => Density(x);

    // Source: Cody, "Rational Chebyshev approximations for the error function", Mathematics of Computation 23 (1969).
    private static double Erfc(double x)
    {
        var y = Math.Abs(x);
        if (y <= 0.46875)
        {
            var erf = x * Ratio(
                y * y,
                [1.85777706184603153e-1, 3.16112374387056560e+0, 1.13864154151050156e+2, 3.77485237685302021e+2, 3.20937758913846947e+3],
                [1, 2.36012909523441209e+1, 2.44024637934444173e+2, 1.28261652607737228e+3, 2.84423683343917062e+3]);
            return 1 - erf;
        }

        double upper;
        if (y <= 4)
        {
            upper = Ratio(
                y,
                [
                    2.15311535474403846e-8, 5.64188496988670089e-1, 8.88314979438837594e+0, 6.61191906371416295e+1,
                    2.98635138197400131e+2, 8.81952221241769090e+2, 1.71204761263407058e+3, 2.05107837782607147e+3,
                    1.23033935479799725e+3,
                ],
                [
                    1, 1.57449261107098347e+1, 1.17693950891312499e+2, 5.37181101862009858e+2,
                    1.62138957456669019e+3, 3.29079923573345963e+3, 4.36261909014324716e+3, 3.43936767414372164e+3,
                    1.23033935480374942e+3,
                ]);
        }
        else
        {
            var inverse = 1 / (y * y);
            var correction = inverse * Ratio(
                inverse,
                [
                    1.63153871373020978e-2, 3.05326634961232344e-1, 3.60344899949804439e-1, 1.25781726111229246e-1,
                    1.60837851487422766e-2, 6.58749161529837803e-4,
                ],
                [
                    1, 2.56852019228982242e+0, 1.87295284992346725e+0, 5.27905102951428412e-1,
                    6.05183413124413191e-2, 2.33520497626869185e-3,
                ]);
            upper = (OneOverRootPi - correction) / y;
        }

        upper *= ExpOfMinusSquare(y);
        return x < 0 ? 2 - upper : upper;
    }

    // exp(-y²) with y² split into a part that is exact and a small rest: the rounding of y² would cost digits in the tail.
    private static double ExpOfMinusSquare(double y)
    {
        var coarse = Math.Truncate(y * 16) / 16;
        return Math.Exp(-coarse * coarse) * Math.Exp(-(y - coarse) * (y + coarse));
    }

    // One polynomial over another, both with the highest power first.
    private static double Ratio(double x, ReadOnlySpan<double> above, ReadOnlySpan<double> below) => Polynomial(x, above) / Polynomial(x, below);

    private static double Polynomial(double x, ReadOnlySpan<double> coefficients)
    {
        var sum = 0.0;
        foreach (var coefficient in coefficients)
        {
            sum = (sum * x) + coefficient;
        }

        return sum;
    }
}
