using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Works out a <see cref="TargetAccuracy"/> while shots arrive, in memory that does not grow with their number.</summary>
/// <param name="name">The target.</param>
/// <param name="settings">Lane and noise.</param>
public sealed class TargetAccuracyAccumulator(string name, AccuracySettings settings)
{
    private const string NoWidth = "the target has no width, so it cannot be held";
    private const int WholeBoard = 100;

    private readonly ErrorAccumulator _errors = new();
    private readonly MissHistogram _misses = new();
    private readonly TenShotSpreadAccumulator _tens = new();
    private Feet _distance;
    private bool _atSeveralDistances;
    private int _shots;
    private int _interpolated;
    private int _judged;
    private int _hits;
    private int _step = WholeBoard;

    /// <summary>The plain measures so far.</summary>
    public ErrorMeasures Measures => _errors.Result;

    /// <summary>Everything that is told of the shots added so far.</summary>
    public TargetAccuracy Result
    {
        get
        {
            var measures = _errors.Result;
            var n = measures.Count;
            var bias = measures.ConstantError ?? 0;
            var variable = measures.VariableError ?? 0;
            var toInference = n < 2 ? 1 : Math.Sqrt(n / (n - 1.0));
            var spread = EstimateLimits.OfSpread(variable * toInference, n);
            Feet? distance = _atSeveralDistances ? null : _distance;
            var step = n >= ReadingCorrection.FewestForStep ? _step / (double)WholeBoard : (double?)null;
            return new TargetAccuracy(
                name,
                _shots,
                n,
                _interpolated,
                HitRateEstimate.Of(_hits, _judged, n > 0 ? NoWidth : EstimateLimits.NoShot),
                EstimateLimits.OfMean(bias, variable * toInference, n),
                n == 0 ? null : Math.Abs(bias),
                spread.Times(1 / toInference),
                spread,
                n < 2 ? null : 1 / Math.Sqrt(2 * (n - 1.0)),
                EstimateLimits.OfMean(measures.AbsoluteError ?? 0, _errors.DeviationOfSizes ?? 0, n),
                Total(measures),
                EffectiveWidth.Of(spread, distance, settings.Lane),
                ReadingCorrection.Of(spread, step, settings.NoiseBoards),
                RobustAccuracy.Of(_misses, step),
                _tens.Result(distance, settings.Lane));
        }
    }

    /// <summary>Adds one shot. A crossing that nobody measured is a shot, and nothing else.</summary>
    /// <param name="shot">What it did at this target.</param>
    public void Add(ObservedTarget shot)
    {
        _atSeveralDistances |= _shots > 0 && shot.Distance != _distance;
        _distance = shot.Distance;
        _shots++;
        if (shot is not { Board: { } board, Miss: { } miss })
        {
            return;
        }

        _interpolated += shot.Kind == CrossingKind.Interpolated ? 1 : 0;
        _errors.Add(miss);
        _misses.Add(miss);
        _tens.Add(miss);
        _step = GreatestDivisor(_step, (int)(Math.Abs(board.ExactBoards) * WholeBoard));
        if (shot.Held is { } held)
        {
            _judged++;
            _hits += held ? 1 : 0;
        }
    }

    // Source: Patnaik, "The non-central chi-square and F-distributions and their applications", Biometrika 36 (1949), from memory: a
    // chi-square with the mean and variance of Σe² stands in for it.
    private static BoundedEstimate Total(ErrorMeasures measures)
    {
        if (measures is not { Count: >= 2, ConstantError: { } bias, VariableError: { } variable, TotalError: { } total } || variable == 0)
        {
            return measures.TotalError is { } only
                ? BoundedEstimate.Bare(only, measures.Count < 2 ? EstimateLimits.OneShot : EstimateLimits.NoScatter)
                : BoundedEstimate.Unknown(EstimateLimits.NoShot);
        }

        var scatter = variable * variable * measures.Count / (measures.Count - 1);
        var square = total * total;
        var freedom = measures.Count * square * square / ((scatter * scatter) + (2 * scatter * bias * bias));
        return EstimateLimits.OfSpread(total, measures.Count, freedom: Math.Max(1, freedom));
    }

    private static int GreatestDivisor(int left, int right)
    {
        while (right != 0)
        {
            (left, right) = (right, left % right);
        }

        return left;
    }
}
