namespace AimTrainer.Domain;

/// <summary>
/// What is known of a bowler's misses at one target: a normal-inverse-gamma distribution of their bias (mean) and spread (standard
/// deviation), a prior and the weighted sums of the misses so far.
/// </summary>
/// <remarks>
/// Full doubles in boards: nothing of it is shown or graded as it is. The default value is not a posterior; make one with
/// <see cref="FromPrior(BoardOffset)"/>. Source: reference statistics.md section 2.5; the formulas are those of the conjugate
/// prior of a normal with unknown mean and variance.
/// </remarks>
public readonly record struct ScatterPosterior
{
    private readonly double _priorBias;
    private readonly double _priorBiasWeight;
    private readonly double _priorShape;
    private readonly double _priorScale;
    private readonly double _sum;
    private readonly double _sumOfSquares;

    private ScatterPosterior(double bias, double biasWeight, double shape, double scale, double shots, double sum, double sumOfSquares)
    {
        _priorBias = bias;
        _priorBiasWeight = biasWeight;
        _priorShape = shape;
        _priorScale = scale;
        Shots = shots;
        _sum = sum;
        _sumOfSquares = sumOfSquares;
    }

    /// <summary>How many shots it rests on; less than were thrown where old ones were discounted.</summary>
    public double Shots { get; }

    /// <summary>Expected bias in boards, positive inside (m).</summary>
    public double BiasBoards => ((_priorBiasWeight * _priorBias) + _sum) / BiasWeight;

    /// <summary>How many shots the expected bias is worth (κ).</summary>
    public double BiasWeight => _priorBiasWeight + Shots;

    /// <summary>Shape of the inverse gamma distribution of the variance (a).</summary>
    public double Shape => _priorShape + (Shots / 2);

    /// <summary>Scale of the inverse gamma distribution of the variance, in square boards (b).</summary>
    public double Scale
    {
        get
        {
            if (Shots == 0)
            {
                return _priorScale;
            }

            var mean = _sum / Shots;

            // The difference of two nearly equal sums may come out a rounding error below 0.
            var within = Math.Max(0, _sumOfSquares - (mean * _sum));
            var off = mean - _priorBias;
            return _priorScale + (within / 2) + (_priorBiasWeight * Shots * off * off / (2 * BiasWeight));
        }
    }

    /// <summary>Degrees of freedom of the Student t distribution of the next miss.</summary>
    public double PredictiveFreedom => 2 * Shape;

    /// <summary>Scale of that distribution, in boards; its place is <see cref="BiasBoards"/>.</summary>
    public double PredictiveScaleBoards => Math.Sqrt(Scale * (BiasWeight + 1) / (Shape * BiasWeight));

    /// <summary>
    /// How unsure the spread is, as a share of itself: the standard deviation of its logarithm, half the root of the trigamma function
    /// of <see cref="Shape"/>. 0.4 for a new bowler, 0.15 after 20 shots, 0.10 after 50.
    /// </summary>
    public double SpreadUncertainty => Math.Sqrt(SpecialFunctions.Trigamma(Shape)) / 2;

    /// <summary>What is known of a bowler who has not thrown yet: no bias, worth one shot; spread known to about 40 %.</summary>
    /// <param name="spread">The spread to expect, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not more than 0.</exception>
    /// <remarks>m = 0, κ = 1, a = 2, b = 2 σ². Source: reference statistics.md sections 2.5 and 10.</remarks>
    public static ScatterPosterior FromPrior(BoardOffset spread) => FromPrior(0, 1, 2, 2 * spread.Boards * spread.Boards);

    /// <summary>The same with a prior of one's own.</summary>
    /// <param name="biasBoards">Expected bias, finite (m0).</param>
    /// <param name="biasWeight">How many shots that is worth, more than 0 (κ0).</param>
    /// <param name="shape">Shape of the variance's distribution, more than 0 (a0).</param>
    /// <param name="scale">Scale of the variance's distribution in square boards, more than 0 (b0).</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside its range.</exception>
    public static ScatterPosterior FromPrior(double biasBoards, double biasWeight, double shape, double scale) => new(
        FixedPoint.InRange(biasBoards, BoardOffset.Minimum, BoardOffset.Maximum, nameof(biasBoards)),
        Guard.Positive(biasWeight),
        Guard.Positive(shape),
        Guard.Positive(scale),
        0,
        0,
        0);

    /// <summary>What is known after one more shot.</summary>
    /// <param name="missBoards">Its miss, positive inside.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or beyond the range of a <see cref="BoardOffset"/>.</exception>
    public ScatterPosterior Add(double missBoards)
    {
        FixedPoint.InRange(missBoards, BoardOffset.Minimum, BoardOffset.Maximum, nameof(missBoards));
        return new(
            _priorBias,
            _priorBiasWeight,
            _priorShape,
            _priorScale,
            Shots + 1,
            _sum + missBoards,
            _sumOfSquares + (missBoards * missBoards));
    }

    /// <summary>What is still known when the shots so far count for less: a bowler changes. The prior stays.</summary>
    /// <param name="keep">The share of their weight that they keep, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public ScatterPosterior Discounted(double keep)
    {
        FixedPoint.InRange(keep, 0, 1, nameof(keep));
        return new(_priorBias, _priorBiasWeight, _priorShape, _priorScale, Shots * keep, _sum * keep, _sumOfSquares * keep);
    }

    /// <summary>The width that the next shot holds with a given probability, all that is unsure taken into account.</summary>
    /// <param name="goalHitRate">More than 0, less than 1.</param>
    /// <returns>The whole width in boards.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside its range.</exception>
    public double PredictiveWidthBoards(double goalHitRate)
    {
        Guard.Share(goalHitRate);
        var scale = PredictiveScaleBoards;
        return 2 * scale * CentralInterval.HalfWidth(new StudentT(PredictiveFreedom), BiasBoards / scale, goalHitRate);
    }
}
