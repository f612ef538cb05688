namespace AimTrainer.Analysis;

/// <summary>Means, variances and covariances of several variables, worked out while values arrive, without their large offsets costing digits.</summary>
/// <remarks>
/// Source: Welford, "Note on a method for calculating corrected sums of squares and products", Technometrics 4 (1962). Not for use from several
/// threads at once.
/// </remarks>
/// <param name="variables">How many, 1 or more.</param>
public sealed class CoMoments(int variables)
{
    private readonly double[] _means = new double[variables];
    private readonly double[] _products = new double[variables * variables];
    private readonly double[] _apart = new double[variables];

    /// <summary>How many variables.</summary>
    public int Variables => variables;

    /// <summary>How many rows were added, n.</summary>
    public int Count { get; private set; }

    /// <summary>The mean of a variable; 0 when nothing was added.</summary>
    public double Mean(int variable) => _means[variable];

    /// <summary>Sum of products of deviations from the means.</summary>
    public double Product(int left, int right) => _products[left >= right ? (left * variables) + right : (right * variables) + left];

    /// <summary>Covariance, or variance of one with itself, divided by n - 1; not a number below two rows.</summary>
    public double Covariance(int left, int right) => Count < 2 ? double.NaN : Product(left, right) / (Count - 1);

    /// <summary>Variance of a weighted sum of variables, divided by n - 1.</summary>
    /// <param name="weights">One a variable.</param>
    public double VarianceOf(params ReadOnlySpan<double> weights)
    {
        var sum = 0.0;
        for (var i = 0; i < variables; i++)
        {
            for (var j = 0; j < variables; j++)
            {
                sum += weights[i] * weights[j] * Covariance(i, j);
            }
        }

        return Math.Max(0, sum);
    }

    /// <summary>Mean of a weighted sum of variables.</summary>
    /// <param name="weights">One a variable.</param>
    public double MeanOf(params ReadOnlySpan<double> weights)
    {
        var sum = 0.0;
        for (var i = 0; i < variables; i++)
        {
            sum += weights[i] * _means[i];
        }

        return sum;
    }

    /// <summary>Adds a row.</summary>
    /// <param name="values">One a variable, all finite.</param>
    /// <exception cref="ArgumentException">Too few or too many values.</exception>
    public void Add(params ReadOnlySpan<double> values)
    {
        if (values.Length != variables)
        {
            throw new ArgumentException($"found {values.Length} values; allowed: {variables}", nameof(values));
        }

        Count++;
        var share = (Count - 1.0) / Count;
        for (var i = 0; i < variables; i++)
        {
            _apart[i] = values[i] - _means[i];
            _means[i] += _apart[i] / Count;
            for (var j = 0; j <= i; j++)
            {
                _products[(i * variables) + j] += share * _apart[i] * _apart[j];
            }
        }
    }
}
