using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace AimTrainer.Calibration;

/// <summary>
/// The direct linear transform: each mark gives two equations that are linear in the nine numbers of the matrix; the right singular
/// vector of the smallest singular value solves them best.
/// </summary>
/// <remarks>Source: Hartley and Zisserman, Multiple View Geometry in Computer Vision, algorithm 4.2, the normalised DLT (from memory).</remarks>
internal static class DirectLinear
{
    /// <summary>The matrix between normalised points, of length 1, and the condition of the equations.</summary>
    public static (Homography Matrix, double Condition) Solve(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> toX, ReadOnlySpan<double> toY)
    {
        // Four marks give eight equations; a row of zeros makes the ninth that the decomposition wants.
        var equations = Matrix<double>.Build.Dense(Math.Max(2 * x.Length, 9), 9);
        for (var i = 0; i < x.Length; i++)
        {
            Row(equations, 2 * i, 0, x[i], y[i], toX[i]);
            Row(equations, (2 * i) + 1, 3, x[i], y[i], toY[i]);
        }

        // The triangular factor has the same singular values and right vectors, and is small however many marks there are.
        var svd = equations.QR(QRMethod.Thin).R.Svd(computeVectors: true);
        var h = svd.VT.Row(8);
        return (new Homography(h[0], h[1], h[2], h[3], h[4], h[5], h[6], h[7], h[8]), svd.S[0] / svd.S[7]);
    }

    private static void Row(Matrix<double> equations, int row, int column, double x, double y, double to)
    {
        equations[row, column] = x;
        equations[row, column + 1] = y;
        equations[row, column + 2] = 1;
        equations[row, 6] = -to * x;
        equations[row, 7] = -to * y;
        equations[row, 8] = -to;
    }
}
