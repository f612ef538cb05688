namespace AimTrainer.Analysis;

/// <summary>
/// Least squares for <c>y = A + B f(r, x)</c>. For a given rate the best A and B are those of a straight line, so only the rate is
/// searched: through a grid, then to the root of the derivative. So it cannot stop at a wrong place for want of a good first guess.
/// </summary>
/// <remarks>
/// Source of the idea: Golub &amp; Pereyra 1973, SIAM Journal on Numerical Analysis 10:413-432 (variable projection; from memory).
/// Standard errors from the Jacobian at the minimum, as usual.
/// </remarks>
internal static class CurveFitting
{
    private const int GridSteps = 400;
    private const int MostHalvings = 200;

    /// <summary>Whether there is an asymptote, and how low it may be.</summary>
    internal enum AsymptoteRule
    {
        /// <summary>Any.</summary>
        Free,

        /// <summary>0 or more: of a quantity that cannot be negative.</summary>
        NotNegative,

        /// <summary>Held at 0.</summary>
        None,
    }

    /// <summary>The best fit with a rate between two limits.</summary>
    /// <param name="xs">Where; at least as many as there are parameters.</param>
    /// <param name="ys">The values.</param>
    /// <param name="basis">The bent part.</param>
    /// <param name="rule">About the asymptote.</param>
    /// <param name="lowest">Lowest rate, more than 0.</param>
    /// <param name="highest">Highest rate.</param>
    public static FittedCurve Fit(double[] xs, double[] ys, CurveBasis basis, AsymptoteRule rule, double lowest, double highest)
    {
        double RateAt(int step) => lowest * Math.Pow(highest / lowest, (double)step / GridSteps);
        var best = 0;
        var least = double.PositiveInfinity;
        for (var step = 0; step <= GridSteps; step++)
        {
            if (At(xs, ys, basis, rule, RateAt(step)).Squares is var squares && squares < least)
            {
                (best, least) = (step, squares);
            }
        }

        var (low, high) = (RateAt(Math.Max(best - 1, 0)), RateAt(Math.Min(best + 1, GridSteps)));
        var (downhillAtLow, downhillAtHigh) = (At(xs, ys, basis, rule, low).ByRate < 0, At(xs, ys, basis, rule, high).ByRate < 0);
        var atLimit = !downhillAtLow || downhillAtHigh;
        var rate = atLimit ? RateAt(best) : Root(rate => At(xs, ys, basis, rule, rate).ByRate, low, high);
        return Describe(xs, ys, basis, rate, atLimit, At(xs, ys, basis, rule, rate));
    }

    private static double Root(Func<double, double> slope, double low, double high)
    {
        for (var halving = 0; halving < MostHalvings; halving++)
        {
            var middle = low + ((high - low) / 2);
            if (middle <= low || middle >= high)
            {
                break;
            }

            if (slope(middle) < 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low + ((high - low) / 2);
    }

    // The squares that the best A and B leave, and how they change with the rate; A and B, being best, do not enter that change.
    private static (double A, double B, bool Held, double Squares, double ByRate) At(
        double[] xs, double[] ys, CurveBasis basis, AsymptoteRule rule, double rate)
    {
        var n = xs.Length;
        var (values, slopes) = (new double[n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            (values[i], slopes[i]) = basis(rate, xs[i]);
        }

        var (a, b, held) = (0.0, 0.0, true);
        if (rule != AsymptoteRule.None)
        {
            var (meanF, meanY) = (TrendSeries.Mean(values), TrendSeries.Mean(ys));
            var (ff, fy) = (0.0, 0.0);
            for (var i = 0; i < n; i++)
            {
                ff += (values[i] - meanF) * (values[i] - meanF);
                fy += (values[i] - meanF) * (ys[i] - meanY);
            }

            b = ff > 0 ? fy / ff : 0;
            a = meanY - (b * meanF);
            held = rule == AsymptoteRule.NotNegative && a < 0;
        }

        if (held)
        {
            var (ff, fy) = (0.0, 0.0);
            for (var i = 0; i < n; i++)
            {
                ff += values[i] * values[i];
                fy += values[i] * ys[i];
            }

            (a, b) = (0, ff > 0 ? fy / ff : 0);
        }

        var (squares, byRate) = (0.0, 0.0);
        for (var i = 0; i < n; i++)
        {
            var residual = ys[i] - a - (b * values[i]);
            squares += residual * residual;
            byRate -= 2 * residual * b * slopes[i];
        }

        return (a, b, held, squares, byRate);
    }

    private static FittedCurve Describe(
        double[] xs, double[] ys, CurveBasis basis, double rate, bool atLimit, (double A, double B, bool Held, double Squares, double ByRate) fit)
    {
        var columns = new List<double[]>();
        if (!fit.Held)
        {
            columns.Add([.. xs.Select(_ => 1.0)]);
        }

        columns.Add([.. xs.Select(x => basis(rate, x).Value)]);
        columns.Add([.. xs.Select(x => fit.B * basis(rate, x).ByRate)]);
        var spare = xs.Length - columns.Count;
        double? spread = spare > 0 ? Math.Sqrt(fit.Squares / spare) : null;
        var errors = spread is { } s && ColumnErrors(columns) is { } scales ? Array.ConvertAll(scales, scale => s * scale) : null;
        return new FittedCurve(
            fit.A,
            fit.B,
            rate,
            fit.Held ? null : errors?[0],
            errors?[^2],
            errors?[^1],
            fit.Squares,
            spread,
            fit.Held,
            atLimit,
            InformationCriteria.Of(xs.Length, fit.Squares, columns.Count, ys.Max(Math.Abs)));
    }

    // √ of the diagonal of (JᵀJ)⁻¹, through an orthogonal factor of J (modified Gram-Schmidt, columns first brought to length 1);
    // null when the columns do not tell the parameters apart.
    private static double[]? ColumnErrors(List<double[]> columns)
    {
        var p = columns.Count;
        var lengths = columns.ConvertAll(column => Math.Sqrt(column.Sum(v => v * v)));
        if (lengths.Exists(length => !(length > 0)))
        {
            return null;
        }

        var q = columns.Select((column, j) => Array.ConvertAll(column, v => v / lengths[j])).ToArray();
        var r = new double[p, p];
        for (var j = 0; j < p; j++)
        {
            r[j, j] = Math.Sqrt(q[j].Sum(v => v * v));
            if (r[j, j] < 1e-10)
            {
                return null;
            }

            for (var i = 0; i < q[j].Length; i++)
            {
                q[j][i] /= r[j, j];
            }

            for (var k = j + 1; k < p; k++)
            {
                r[j, k] = q[j].Zip(q[k], (a, b) => a * b).Sum();
                for (var i = 0; i < q[k].Length; i++)
                {
                    q[k][i] -= r[j, k] * q[j][i];
                }
            }
        }

        // Row j of R⁻¹ by back substitution; its length is the error of parameter j.
        var inverse = new double[p, p];
        for (var k = 0; k < p; k++)
        {
            inverse[k, k] = 1 / r[k, k];
            for (var j = k - 1; j >= 0; j--)
            {
                var sum = 0.0;
                for (var m = j + 1; m <= k; m++)
                {
                    sum += r[j, m] * inverse[m, k];
                }

                inverse[j, k] = -sum / r[j, j];
            }
        }

        return [.. Enumerable.Range(0, p).Select(j => Math.Sqrt(Enumerable.Range(0, p).Sum(k => inverse[j, k] * inverse[j, k])) / lengths[j])];
    }
}
