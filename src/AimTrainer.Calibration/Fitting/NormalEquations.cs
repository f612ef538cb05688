namespace AimTrainer.Calibration;

/// <summary>The damped normal equations of one step, for ten unknowns at most; solved by Cholesky's factors, without allocation.</summary>
internal sealed class NormalEquations(int unknowns)
{
    private readonly double[] _normal = new double[unknowns * unknowns];
    private readonly double[] _right = new double[unknowns];
    private readonly double[] _factor = new double[unknowns * unknowns];

    /// <summary>The step that was solved for, to be subtracted.</summary>
    public double[] Move { get; } = new double[unknowns];

    /// <summary>Takes slopes (a row for each error) and errors.</summary>
    public void Set(ReadOnlySpan<double> slopes, ReadOnlySpan<double> errors)
    {
        Array.Clear(_normal);
        Array.Clear(_right);
        for (var row = 0; row < errors.Length; row++)
        {
            var slope = slopes.Slice(row * unknowns, unknowns);
            for (var i = 0; i < unknowns; i++)
            {
                _right[i] += slope[i] * errors[row];
                for (var j = 0; j <= i; j++)
                {
                    _normal[(i * unknowns) + j] += slope[i] * slope[j];
                }
            }
        }
    }

    /// <summary>Solves for <see cref="Move"/> with every diagonal element made larger by a share of itself.</summary>
    /// <returns>Whether the equations have one solution.</returns>
    public bool TrySolve(double damping)
    {
        for (var i = 0; i < unknowns; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = _normal[(i * unknowns) + j] * (i == j ? 1 + damping : 1);
                for (var k = 0; k < j; k++)
                {
                    sum -= _factor[(i * unknowns) + k] * _factor[(j * unknowns) + k];
                }

                if (i == j && !(sum > 0))
                {
                    return false;
                }

                _factor[(i * unknowns) + j] = i == j ? Math.Sqrt(sum) : sum / _factor[(j * unknowns) + j];
            }
        }

        for (var i = 0; i < unknowns; i++)
        {
            var sum = _right[i];
            for (var k = 0; k < i; k++)
            {
                sum -= _factor[(i * unknowns) + k] * Move[k];
            }

            Move[i] = sum / _factor[(i * unknowns) + i];
        }

        for (var i = unknowns - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < unknowns; k++)
            {
                Move[i] -= _factor[(k * unknowns) + i] * Move[k];
            }

            Move[i] /= _factor[(i * unknowns) + i];
        }

        return Array.TrueForAll(Move, double.IsFinite);
    }
}
