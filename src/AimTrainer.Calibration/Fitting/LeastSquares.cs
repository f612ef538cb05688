namespace AimTrainer.Calibration;

/// <summary>Levenberg-Marquardt on the errors of a <see cref="Reprojection"/>.</summary>
/// <remarks>Source: Hartley and Zisserman, Multiple View Geometry in Computer Vision, appendix 6 (from memory).</remarks>
internal static class LeastSquares
{
    private const int MostSteps = 200;

    /// <summary>A step this small, in unknowns that are about 1, moves no pixel by a thousandth of a millionth.</summary>
    private const double SmallestMove = 1e-13;

    /// <summary>Goes down from a start to where no step makes the sum of squares less.</summary>
    /// <returns>Where, and the sum of squared errors there; null when the start has a mark behind the horizon.</returns>
    public static (double[] Unknowns, double SumOfSquares)? Minimise(Reprojection problem, double[] start)
    {
        var at = (double[])start.Clone();
        var (errors, slopes) = (new double[problem.Equations], new double[problem.Equations * problem.Unknowns]);
        if (!problem.Evaluate(at, errors, slopes))
        {
            return null;
        }

        var sum = Squares(errors);
        var equations = new NormalEquations(at.Length);
        var (trial, trialErrors, trialSlopes) = (new double[at.Length], new double[errors.Length], new double[slopes.Length]);
        equations.Set(slopes, errors);
        var damping = 1e-3;
        for (var step = 0; step < MostSteps && damping < 1e10; step++)
        {
            if (!equations.TrySolve(damping))
            {
                damping *= 10;
                continue;
            }

            var moved = 0.0;
            for (var i = 0; i < at.Length; i++)
            {
                trial[i] = at[i] - equations.Move[i];
                moved = Math.Max(moved, Math.Abs(equations.Move[i]) / (1 + Math.Abs(at[i])));
            }

            // Near the bottom the sum no longer tells better from worse, so its last digits are not asked.
            var trialSum = problem.Evaluate(trial, trialErrors, trialSlopes) ? Squares(trialErrors) : double.PositiveInfinity;
            var better = trialSum <= sum * (1 + 1e-13);
            if (better)
            {
                (at, trial, errors, trialErrors, slopes, trialSlopes, sum) = (trial, at, trialErrors, errors, trialSlopes, slopes, trialSum);
                equations.Set(slopes, errors);
                damping = Math.Max(damping / 10, 1e-15);
            }
            else
            {
                damping *= 10;
            }

            if (moved <= SmallestMove)
            {
                break;
            }
        }

        return (at, sum);
    }

    private static double Squares(ReadOnlySpan<double> errors)
    {
        var sum = 0.0;
        foreach (var error in errors)
        {
            sum += error * error;
        }

        return sum;
    }
}
