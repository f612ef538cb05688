namespace AimTrainer.Analysis;

/// <summary>An ordinary least squares fit of few columns beside an intercept, that keeps what a comparison asks of it.</summary>
internal sealed class LeastSquares
{
    // Less of a column than this share, squared, is left when the others are taken out: then it tells the same thing as they do.
    private const double LeastOwnShare = 1e-9;

    private readonly double[] _errorFactors;
    private readonly double[] _ownShares;

    private LeastSquares(double[] coefficients, double[] errorFactors, double[] residuals, int freedom, double[] firstPulls, double[] ownShares)
    {
        (Coefficients, _errorFactors, Residuals, Freedom, _ownShares) = (coefficients, errorFactors, residuals, freedom, ownShares);
        FirstErrorOfUnequal = Math.Sqrt(residuals.Select((residual, i) => firstPulls[i] * firstPulls[i] * residual * residual / Left(i)).Sum());
        ResidualSquares = residuals.Sum(residual => residual * residual);
    }

    /// <summary>One a column.</summary>
    public double[] Coefficients { get; }

    /// <summary>One a row.</summary>
    public double[] Residuals { get; }

    /// <summary>Rows less columns less one.</summary>
    public int Freedom { get; }

    /// <summary>Sum of the squared residuals.</summary>
    public double ResidualSquares { get; }

    /// <summary>Standard deviation about the fit.</summary>
    public double Deviation => Math.Sqrt(ResidualSquares / Freedom);

    /// <summary>Standard error of the first coefficient that does not trust all rows to scatter alike.</summary>
    /// <remarks>Source: MacKinnon &amp; White, J. Econometrics 29 (1985) 305-325, the estimator known as HC2.</remarks>
    public double FirstErrorOfUnequal { get; }

    /// <summary>Standard error of a coefficient where all rows scatter alike.</summary>
    public double Error(int column) => Deviation * _errorFactors[column];

    /// <summary>Fits.</summary>
    /// <param name="response">One a row.</param>
    /// <param name="columns">Each as long as the response.</param>
    /// <param name="dependent">The first column that does not vary or tells the same thing as those before it; -1 when there is none.</param>
    /// <returns>The fit; null when a column is dependent or no degree of freedom is left.</returns>
    public static LeastSquares? Fit(double[] response, IReadOnlyList<double[]> columns, out int dependent)
    {
        var (n, k) = (response.Length, columns.Count);
        dependent = -1;
        if (n - k - 1 < 1)
        {
            return null;
        }

        // Centred and scaled to length 1, so that mph beside rpm costs no digits.
        var (centred, scale) = (new double[k][], new double[k]);
        for (var j = 0; j < k; j++)
        {
            centred[j] = Centred(columns[j]);
            var largest = columns[j].Max(Math.Abs);
            scale[j] = Math.Sqrt(Dot(centred[j], centred[j]));
            if (scale[j] <= 1e-12 * largest * Math.Sqrt(n))
            {
                dependent = j;
                return null;
            }

            for (var i = 0; i < n; i++)
            {
                centred[j][i] /= scale[j];
            }
        }

        var root = new double[k * k];
        for (var i = 0; i < k; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = Dot(centred[i], centred[j]);
                for (var m = 0; m < j; m++)
                {
                    sum -= root[(i * k) + m] * root[(j * k) + m];
                }

                if (i == j && sum < LeastOwnShare)
                {
                    dependent = i;
                    return null;
                }

                root[(i * k) + j] = i == j ? Math.Sqrt(sum) : sum / root[(j * k) + j];
            }
        }

        var values = Centred(response);
        var solved = Solved(root, [.. centred.Select(column => Dot(column, values))]);
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < k; j++)
            {
                values[i] -= solved[j] * centred[j][i];
            }
        }

        var factors = new double[k];
        for (var j = 0; j < k; j++)
        {
            var unit = new double[k];
            unit[j] = 1;
            factors[j] = Math.Sqrt(Solved(root, unit)[j]) / scale[j];
        }

        var (pulls, own) = Rows(root, centred);
        return new LeastSquares([.. solved.Select((value, j) => value / scale[j])], factors, values, n - k - 1, [.. pulls.Select(pull => pull / scale[0])], own);
    }

    /// <summary>The row that stands out most from the fit to the others, and how often chance alone makes any row stand out so far.</summary>
    /// <remarks>
    /// Source: Cook &amp; Weisberg, "Residuals and Influence in Regression" (1982), 2.2.2: the externally studentised residual, which is a t;
    /// times the number of rows (Bonferroni).
    /// </remarks>
    public (int Row, double P) Outlier()
    {
        var (worst, size) = (0, 0.0);
        for (var i = 0; i < Residuals.Length; i++)
        {
            var own = Residuals[i] * Residuals[i] / Left(i);
            var others = Math.Max((ResidualSquares - own) / (Freedom - 1), 1e-300);
            var t = Math.Sqrt(own / others);
            (worst, size) = t > size ? (i, t) : (worst, size);
        }

        return (worst, Freedom < 2 ? 1 : Math.Min(1, Residuals.Length * Tails.TwoSided(size, Freedom - 1)));
    }

    /// <summary>The share of a row's deviation that the fit leaves: not all of it, as it leans toward each row.</summary>
    private double Left(int row) => Math.Max(1e-9, 1 - _ownShares[row]);

    /// <summary>How much each row pulls the first coefficient, and the fit toward itself.</summary>
    private static (double[] Pulls, double[] Own) Rows(double[] root, double[][] centred)
    {
        var (n, k) = (centred[0].Length, centred.Length);
        var first = new double[k];
        first[0] = 1;
        first = Solved(root, first);
        var (pulls, own, row) = (new double[n], new double[n], new double[k]);
        for (var i = 0; i < n; i++)
        {
            own[i] = 1.0 / n;
            for (var j = 0; j < k; j++)
            {
                pulls[i] += first[j] * centred[j][i];
                row[j] = centred[j][i];
                for (var m = 0; m < j; m++)
                {
                    row[j] -= root[(j * k) + m] * row[m];
                }

                row[j] /= root[(j * k) + j];
                own[i] += row[j] * row[j];
            }
        }

        return (pulls, own);
    }

    private static double[] Solved(double[] root, double[] right)
    {
        var k = right.Length;
        var x = (double[])right.Clone();
        for (var i = 0; i < k; i++)
        {
            for (var j = 0; j < i; j++)
            {
                x[i] -= root[(i * k) + j] * x[j];
            }

            x[i] /= root[(i * k) + i];
        }

        for (var i = k - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < k; j++)
            {
                x[i] -= root[(j * k) + i] * x[j];
            }

            x[i] /= root[(i * k) + i];
        }

        return x;
    }

    private static double[] Centred(double[] values)
    {
        var mean = values.Average();
        return [.. values.Select(value => value - mean)];
    }

    private static double Dot(double[] left, double[] right)
    {
        var sum = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            sum += left[i] * right[i];
        }

        return sum;
    }
}
