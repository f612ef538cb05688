namespace AimTrainer.Motion;

/// <summary>Symmetric positive matrices of a few rows, by Cholesky's method.</summary>
internal static class SmallMatrix
{
    /// <summary>The lower factor L with L Lᵀ = the matrix, or null when it is not positive (to within rounding).</summary>
    public static double[,]? Factor(double[,] matrix)
    {
        var n = matrix.GetLength(0);
        var lower = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i, j];
                for (var k = 0; k < j; k++)
                {
                    sum -= lower[i, k] * lower[j, k];
                }

                if (i != j)
                {
                    lower[i, j] = sum / lower[j, j];
                }
                else if (sum > 1e-12 * matrix[i, i])
                {
                    lower[i, i] = Math.Sqrt(sum);
                }
                else
                {
                    return null;
                }
            }
        }

        return lower;
    }

    /// <summary>Solves for one right side, with a factor.</summary>
    public static double[] Solve(double[,] lower, double[] right)
    {
        var n = right.Length;
        var x = new double[n];
        for (var i = 0; i < n; i++)
        {
            var sum = right[i];
            for (var k = 0; k < i; k++)
            {
                sum -= lower[i, k] * x[k];
            }

            x[i] = sum / lower[i, i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            var sum = x[i];
            for (var k = i + 1; k < n; k++)
            {
                sum -= lower[k, i] * x[k];
            }

            x[i] = sum / lower[i, i];
        }

        return x;
    }

    /// <summary>The inverse, or null when the matrix is not positive.</summary>
    public static double[,]? Inverse(double[,] matrix)
    {
        if (Factor(matrix) is not { } lower)
        {
            return null;
        }

        var n = matrix.GetLength(0);
        var inverse = new double[n, n];
        for (var column = 0; column < n; column++)
        {
            var unit = new double[n];
            unit[column] = 1;
            var solved = Solve(lower, unit);
            for (var row = 0; row < n; row++)
            {
                inverse[row, column] = solved[row];
            }
        }

        return inverse;
    }
}
