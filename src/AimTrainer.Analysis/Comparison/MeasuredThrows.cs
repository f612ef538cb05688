using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>The values of one measure for two balls on a line, less those that stand out from what the throw explains.</summary>
internal sealed class MeasuredThrows
{
    /// <summary>A model is fitted when at least so many degrees of freedom are left.</summary>
    public const int LeastFreedom = 5;

    // A good throw that is taken out makes the limits too narrow: chance alone does it to a measure in one comparison of a hundred.
    private const double OutlierP = 0.01;

    // Half a step of the usual readings: less is no deviation.
    private const double Grain = 0.005;

    private readonly List<OrderedThrow> _throws;
    private readonly List<double> _values;
    private readonly string _reference;
    private readonly List<Covariate> _covariates;
    private readonly List<string> _notUsed = [];
    private LeastSquares? _fit;
    private bool _drift;

    public MeasuredThrows(IEnumerable<OrderedThrow> throws, string reference, MeasureReading reading, IEnumerable<Covariate> covariates, IReadOnlyList<ExcludedThrow> misread)
    {
        _reference = reference;
        _throws = [.. throws.Where(one => reading.Of(one.Shot) is not null)];
        foreach (var place in misread.Where(known => reading.RestsOn(known.Measure!)))
        {
            if (_throws.Find(one => one.Number == place.Number) is { } one)
            {
                _throws.Remove(one);
                Misread.Add(new ExcludedThrow(one.Number, one.Ball, one.Line, reading.Measure.Name, $"read off {place.Measure}, which stands out: misread or real?"));
            }
        }

        _values = [.. _throws.Select(one => reading.Of(one.Shot)!.Value)];
        _covariates = [.. covariates];
        _drift = true;
        Settle();
        if (reading.Gross is { } gross)
        {
            LeaveOut(reading.Measure.Name, gross);
        }
        else if (Outlier() is { } far)
        {
            StandsOut = (_throws[far], _values[far]);
        }
    }

    /// <summary>Those that are left out.</summary>
    public List<ExcludedThrow> Misread { get; } = [];

    /// <summary>One that stands out and stays in; null when none does, or when those that do are left out.</summary>
    public (OrderedThrow Throw, double Value)? StandsOut { get; }

    /// <summary>The throws in order.</summary>
    public IReadOnlyList<OrderedThrow> Throws => _throws;

    /// <summary>Values of the reference ball.</summary>
    public double[] Reference => [.. Of(_values, false)];

    /// <summary>Values of the other ball.</summary>
    public double[] Ball => [.. Of(_values, true)];

    /// <summary>By pairs of throws that follow each other; null unless four fifths of the throws pair up.</summary>
    public PairedComparison? Paired()
    {
        var differences = new List<double>();
        for (var i = 1; i < _throws.Count; i++)
        {
            if (IsBall(i) != IsBall(i - 1))
            {
                differences.Add(IsBall(i) ? _values[i] - _values[i - 1] : _values[i - 1] - _values[i]);
                i++;
            }
        }

        return differences.Count >= 2 && differences.Count * 10 >= _throws.Count * 4
            ? new PairedComparison(differences.Count, MeanDifference.Paired(differences), HodgesLehmann.OfPairs(differences))
            : null;
    }

    /// <summary>The adjusted difference; null when there is nothing to adjust for or too few throws.</summary>
    public CovarianceAdjustment? Adjusted()
    {
        if (_fit is not { } fit || fit.Deviation == 0)
        {
            return null;
        }

        var first = _drift ? 3 : 1;
        var slopes = _covariates.Select((covariate, i) => Slope(covariate.Name, fit.Coefficients[first + i], fit.Error(first + i), one => covariate.Of(one.Shot)!.Value));
        return new CovarianceAdjustment(
            MeanDifference.From(fit.Coefficients[0], Math.Max(fit.Error(0), fit.FirstErrorOfUnequal), fit.Freedom),
            slopes.ToValueList(),
            _drift ? Limited(fit.Coefficients[1], fit.Error(1)) : null,
            _drift ? BallDrift() : null,
            fit.Deviation,
            SlopesDiffer(),
            _notUsed.ToValueList());

        CovariateSlope Slope(string name, double value, double error, Func<OrderedThrow, double> of)
        {
            double[] all = [.. _throws.Select(of)];
            return new CovariateSlope(name, Limited(value, error), Of(all, false).Average(), Of(all, true).Average());
        }
    }

    /// <summary>Values of both balls as if all had been thrown alike; null when nothing is adjusted.</summary>
    public (double[] Reference, double[] Ball)? AdjustedValues()
    {
        if (_fit is not { } fit)
        {
            return null;
        }

        double[] values = [.. fit.Residuals.Select((residual, i) => residual + (IsBall(i) ? fit.Coefficients[0] : 0))];
        return ([.. Of(values, false)], [.. Of(values, true)]);
    }

    private IEnumerable<double> Of(IReadOnlyList<double> values, bool ball)
    {
        for (var i = 0; i < _throws.Count; i++)
        {
            if (IsBall(i) == ball)
            {
                yield return values[i];
            }
        }
    }

    private bool IsBall(int row) => _throws[row].Ball != _reference;

    private BoundedEstimate Limited(double value, double error)
    {
        var reach = EstimateLimits.TwoSidedT(_fit!.Freedom, BoundedEstimate.UsualConfidence) * error;
        return BoundedEstimate.Between(value, value - reach, value + reach);
    }

    /// <summary>The other ball's own drift: the same model seen from that ball.</summary>
    private BoundedEstimate BallDrift()
    {
        var columns = Columns(_covariates);
        for (var i = 0; i < _throws.Count; i++)
        {
            columns[2][i] = IsBall(i) ? 0 : columns[1][i];
        }

        return LeastSquares.Fit([.. _values], columns, out _) is { } seen
            ? Limited(seen.Coefficients[1], seen.Error(1))
            : BoundedEstimate.Unknown("the two balls' drifts cannot be told apart");
    }

    /// <summary>
    /// Ball, then the drift by the reference ball's own throws, then what is adjusted for. With a slope of time of its own for the other
    /// ball, and time counted from the middle of that ball's throws, the ball's coefficient is its mean less what the reference ball's own
    /// throws would have been at that time.
    /// </summary>
    private List<double[]> Columns(IReadOnlyList<Covariate> covariates)
    {
        var columns = new List<double[]> { _throws.Select((_, i) => IsBall(i) ? 1.0 : 0).ToArray() };
        if (_drift)
        {
            double[] order = [.. _throws.Select(one => (double)one.Order)];
            var middle = Of(order, true).DefaultIfEmpty(0).Average();
            columns.Add([.. order.Select(value => value - middle)]);
            columns.Add([.. order.Select((value, i) => IsBall(i) ? value - middle : 0)]);
        }

        columns.AddRange(covariates.Select(covariate => _throws.Select(one => covariate.Of(one.Shot)!.Value).ToArray()));
        return columns;
    }

    /// <summary>Takes as much into the model as the throws can bear. What is given up depends on how many throws there are, never on what they show.</summary>
    private void Settle()
    {
        var balls = _throws.Select((_, i) => IsBall(i)).Distinct().Count();
        if (balls < 2)
        {
            _fit = null;
            return;
        }

        while (_throws.Count - 2 - (_drift ? 2 : 0) - _covariates.Count < LeastFreedom && (_drift || _covariates.Count > 0))
        {
            if (_covariates.Count > 1)
            {
                GiveUp(_covariates.Count - 1, "too few throws");
            }
            else if (_drift)
            {
                _drift = false;
                _notUsed.Add("drift of the lane: too few throws");
            }
            else
            {
                GiveUp(0, "too few throws");
            }
        }

        while (_drift || _covariates.Count > 0)
        {
            _fit = LeastSquares.Fit([.. _values], Columns(_covariates), out var dependent);
            if (_fit is not null)
            {
                return;
            }

            if (_drift && dependent is 1 or 2)
            {
                _drift = false;
                _notUsed.Add("drift of the lane: cannot be told from the balls in this order of throws");
            }
            else if (dependent >= (_drift ? 3 : 1))
            {
                GiveUp(dependent - (_drift ? 3 : 1), "does not vary, or only with something else");
            }
            else
            {
                break;
            }
        }

        _fit = null;
    }

    private void GiveUp(int covariate, string why)
    {
        _notUsed.Add($"{_covariates[covariate].Words}: {why}");
        _covariates.RemoveAt(covariate);
    }

    /// <summary>Takes out what stands out grossly, the worst first, fitting anew each time; at most a sixth of the throws.</summary>
    private void LeaveOut(string measure, double gross)
    {
        var most = _throws.Count / 6;
        while (Misread.Count < most && _throws.Count >= ModifiedZ.FewestValues)
        {
            if (Outlier() is not { } worst || Math.Abs(Model!.Residuals[worst]) < gross)
            {
                return;
            }

            var one = _throws[worst];
            Misread.Add(new ExcludedThrow(one.Number, one.Ball, one.Line, measure, string.Create(
                CultureInfo.InvariantCulture, $"{measure} {_values[worst]:0.##} stands out from the other throws with this ball: misread or real?")));
            _throws.RemoveAt(worst);
            _values.RemoveAt(worst);
            Settle();
        }
    }

    // Without a model: held against the others with the same ball.
    private LeastSquares? Model => _fit ?? LeastSquares.Fit([.. _values], [_throws.Select((_, i) => IsBall(i) ? 1.0 : 0).ToArray()], out _);

    private int? Outlier()
    {
        if (_throws.Count < ModifiedZ.FewestValues || Model is not { } fit)
        {
            return null;
        }

        var (row, p) = fit.Outlier();
        return p < OutlierP && Math.Abs(fit.Residuals[row]) > Grain ? row : null;
    }

    /// <summary>Whether what is adjusted for does something else to one ball than to the other.</summary>
    private double? SlopesDiffer()
    {
        if (_covariates.Count == 0 || _fit!.Freedom - _covariates.Count < LeastFreedom)
        {
            return null;
        }

        var columns = Columns(_covariates);
        foreach (var covariate in _covariates)
        {
            double[] values = [.. _throws.Select(one => covariate.Of(one.Shot)!.Value)];
            var mean = values.Average();
            columns.Add([.. values.Select((value, i) => IsBall(i) ? value - mean : 0)]);
        }

        if (LeastSquares.Fit([.. _values], columns, out _) is not { ResidualSquares: > 0 } wider)
        {
            return null;
        }

        var ratio = (_fit.ResidualSquares - wider.ResidualSquares) / _covariates.Count / (wider.ResidualSquares / wider.Freedom);
        return Tails.AboveFisher(ratio, _covariates.Count, wider.Freedom);
    }
}
