using AimTrainer.Domain;
using MathNet.Numerics.LinearAlgebra;

namespace AimTrainer.Analysis;

/// <summary>An ordinary least squares fit of one variable by others, from their co-moments: no row need be kept.</summary>
/// <param name="Count">Rows, n.</param>
/// <param name="Freedom">Degrees of freedom left: n - predictors - 1.</param>
/// <param name="Intercept">With limits by Student's t.</param>
/// <param name="InterceptError">Its standard error.</param>
/// <param name="Slopes">One a predictor, with limits by Student's t.</param>
/// <param name="SlopeErrors">Their standard errors.</param>
/// <param name="ResidualDeviation">Standard deviation about the fit.</param>
/// <param name="ShareExplained">R², 0 to 1; null when the response does not vary.</param>
public sealed record MomentRegression(
    int Count,
    int Freedom,
    BoundedEstimate Intercept,
    double InterceptError,
    ValueList<BoundedEstimate> Slopes,
    ValueList<double> SlopeErrors,
    double ResidualDeviation,
    double? ShareExplained)
{
    // Beyond this, predictors tell the same thing twice and no digit of a slope can be trusted.
    private const double LeastIndependent = 1e-10;

    /// <summary>Fits.</summary>
    /// <param name="moments">Of all variables.</param>
    /// <param name="response">The variable to be explained.</param>
    /// <param name="predictors">The variables that explain.</param>
    /// <param name="confidence">Of the limits.</param>
    /// <returns>The fit; null when there are too few rows (at least predictors + 3), or predictors do not vary or tell the same thing twice.</returns>
    public static MomentRegression? Of(CoMoments moments, int response, ReadOnlySpan<int> predictors, double confidence = BoundedEstimate.UsualConfidence)
    {
        var k = predictors.Length;
        var freedom = moments.Count - k - 1;
        if (freedom < 2)
        {
            return null;
        }

        var scale = new double[k];
        for (var i = 0; i < k; i++)
        {
            scale[i] = Math.Sqrt(moments.Product(predictors[i], predictors[i]));
            if (scale[i] == 0)
            {
                return null;
            }
        }

        // Scaled to correlations, so that mph beside rpm costs no digits.
        var (inner, outer) = (Matrix<double>.Build.Dense(k, k), Vector<double>.Build.Dense(k));
        for (var i = 0; i < k; i++)
        {
            outer[i] = moments.Product(response, predictors[i]) / scale[i];
            for (var j = 0; j < k; j++)
            {
                inner[i, j] = i == j ? 1 : moments.Product(predictors[i], predictors[j]) / (scale[i] * scale[j]);
            }
        }

        if (inner.Determinant() < LeastIndependent)
        {
            return null;
        }

        var cholesky = inner.Cholesky();
        var beta = cholesky.Solve(outer);
        var inverse = cholesky.Solve(Matrix<double>.Build.DenseIdentity(k));
        var total = moments.Product(response, response);
        var left = Math.Max(0, total - beta.DotProduct(outer));
        var deviation = Math.Sqrt(left / freedom);
        var t = EstimateLimits.TwoSidedT(freedom, confidence);
        var (slopes, errors) = (new BoundedEstimate[k], new double[k]);
        var means = Vector<double>.Build.Dense(k);
        for (var i = 0; i < k; i++)
        {
            errors[i] = deviation * Math.Sqrt(inverse[i, i]) / scale[i];
            slopes[i] = Limited(beta[i] / scale[i], errors[i], t);
            means[i] = moments.Mean(predictors[i]) / scale[i];
        }

        var interceptError = deviation * Math.Sqrt((1.0 / moments.Count) + means.DotProduct(inverse * means));
        return new MomentRegression(
            moments.Count,
            freedom,
            Limited(moments.Mean(response) - beta.DotProduct(means), interceptError, t),
            interceptError,
            ValueList.Create<BoundedEstimate>(slopes),
            ValueList.Create<double>(errors),
            deviation,
            total > 0 ? 1 - (left / total) : null);
    }

    private static BoundedEstimate Limited(double value, double error, double t) => BoundedEstimate.Between(value, value - (t * error), value + (t * error));
}
