namespace AimTrainer.Motion;

/// <summary>How the residuals of one shot change with the lane and with its own throw.</summary>
/// <param name="residuals">The residuals.</param>
/// <param name="ofLane">Their slopes along each free number of the lane.</param>
/// <param name="ofThrow">Their slopes along each free number of the throw.</param>
internal sealed class ShotSlopes(double[] residuals, double[][] ofLane, double[][] ofThrow)
{
    /// <summary>Adds what this shot says of the lane once its throw is eliminated: normal equations, left and right side.</summary>
    public void AddTo(double[,] left, double[] right, double damping)
    {
        var throws = Throws(damping);
        for (var i = 0; i < ofLane.Length; i++)
        {
            var across = ofThrow.Select(slope => Dot(ofLane[i], slope)).ToArray();
            var weighed = throws is null ? new double[across.Length] : SmallMatrix.Solve(throws, across);
            right[i] += Sum(weighed, ofThrow.Select(slope => Dot(slope, residuals))) - Dot(ofLane[i], residuals);
            for (var j = 0; j < ofLane.Length; j++)
            {
                var own = Dot(ofLane[i], ofLane[j]) * (i == j ? 1 + damping : 1);
                left[i, j] += own - Sum(weighed, ofThrow.Select(slope => Dot(ofLane[j], slope)));
            }
        }
    }

    /// <summary>How the throw changes when the lane does; null when the crossings cannot tell the throw.</summary>
    public double[]? Change(double[] laneStep, double damping)
    {
        if (Throws(damping) is not { } factor)
        {
            return null;
        }

        var right = ofThrow.Select(slope =>
        {
            var sum = -Dot(slope, residuals);
            for (var i = 0; i < laneStep.Length; i++)
            {
                sum -= Dot(slope, ofLane[i]) * laneStep[i];
            }

            return sum;
        }).ToArray();
        return SmallMatrix.Solve(factor, right);
    }

    private double[,]? Throws(double damping)
    {
        var n = ofThrow.Length;
        var matrix = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                matrix[i, j] = Dot(ofThrow[i], ofThrow[j]) * (i == j ? 1 + damping : 1);
            }
        }

        return SmallMatrix.Factor(matrix);
    }

    private static double Sum(double[] weights, IEnumerable<double> values) => weights.Zip(values, (weight, value) => weight * value).Sum();

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
