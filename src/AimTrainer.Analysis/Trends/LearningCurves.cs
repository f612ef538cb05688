namespace AimTrainer.Analysis;

/// <summary>
/// Learning curves through a series: exponential <c>A + B e^(-r(N - 1))</c> and power <c>A + B N^(-b)</c>, N counting sessions with the
/// first as 1, so that B is what the first session is above A; beside them a level and a straight line, so that a bend is only claimed
/// where one shows.
/// </summary>
/// <remarks>
/// Source: Newell &amp; Rosenbloom 1981 (power); Heathcote, Brown &amp; Mewhort 2000, Psychonomic Bulletin &amp; Review 7:185-207 (the
/// exponential fits single learners better). The asymptote of a quantity that cannot be negative is held at 0 or above, and b above 0:
/// without that the power curve runs to absurd values.
/// </remarks>
/// <param name="Count">How many sessions.</param>
/// <param name="FirstSession">The session that N counts from; null below <see cref="FewestSessions"/>.</param>
/// <param name="Named">The outcome.</param>
/// <param name="Level">Of a level.</param>
/// <param name="Line">Of a straight line.</param>
/// <param name="Exponential">The exponential; null below <see cref="FewestSessions"/>.</param>
/// <param name="Power">The power curve; null below <see cref="FewestSessions"/>.</param>
/// <param name="SessionsToHalve">
/// ln 2 / r: sessions in which half of what is left to gain is gained. Null unless the exponential is named.
/// </param>
public sealed record LearningCurves(
    int Count,
    double? FirstSession,
    CurveName Named,
    InformationCriteria? Level,
    InformationCriteria? Line,
    FittedCurve? Exponential,
    FittedCurve? Power,
    double? SessionsToHalve)
{
    /// <summary>Fewest sessions for a curve.</summary>
    public const int FewestSessions = 12;

    private const double LowestPower = 0.01;
    private const double HighestPower = 10;

    /// <summary>The curves of a series.</summary>
    /// <param name="points">In the order of their sessions; may be empty.</param>
    /// <param name="canBeNegative">Whether the values could be below 0; else no asymptote is.</param>
    /// <exception cref="ArgumentException">A number is not finite, or the sessions do not grow.</exception>
    public static LearningCurves Of(IReadOnlyList<TrendPoint> points, bool canBeNegative)
    {
        var (sessions, values) = TrendSeries.Columns(points);
        if (values.Length < FewestSessions)
        {
            return new LearningCurves(values.Length, null, CurveName.TooFew, null, null, null, null, null);
        }

        var first = sessions[0];
        var counts = Array.ConvertAll(sessions, session => session - first + 1);
        var span = counts[^1] - counts[0];
        var rule = canBeNegative ? CurveFitting.AsymptoteRule.Free : CurveFitting.AsymptoteRule.NotNegative;
        var exponential = CurveFitting.Fit(Array.ConvertAll(counts, count => count - 1), values, ExponentialPart, rule, 0.01 / span, 20.0 * (values.Length - 1) / span);
        var power = CurveFitting.Fit(counts, values, PowerPart, rule, LowestPower, HighestPower);
        var scale = values.Max(Math.Abs);
        var level = InformationCriteria.Of(values.Length, TrendSeries.SquaresAboutMean(values), 1, scale);
        var line = InformationCriteria.Of(values.Length, StraightTrend.Of(counts, values)!.ResidualSquares, 2, scale);
        var named = Name(level.Bayes, line.Bayes, exponential, power, span);
        return new LearningCurves(
            values.Length, first, named, level, line, exponential, power, named == CurveName.Exponential ? Math.Log(2) / exponential.Rate : null);
    }

    /// <summary>The value of the bend that shows, at a session from the first on; of the exponential where it cannot be told which. Null where none shows.</summary>
    public double? BendAt(double session) => (Named, FirstSession) switch
    {
        (CurveName.Exponential or CurveName.CannotTell, { } first) =>
            Exponential!.Asymptote + (Exponential.Gain * ExponentialPart(Exponential.Rate, session - first).Value),
        (CurveName.Power, { } first) => Power!.Asymptote + (Power.Gain * PowerPart(Power.Rate, session - first + 1).Value),
        _ => null,
    };

    // e^(-rx).
    private static (double Value, double ByRate) ExponentialPart(double rate, double x)
    {
        var value = Math.Exp(-rate * x);
        return (value, -x * value);
    }

    // x^(-b).
    private static (double Value, double ByRate) PowerPart(double rate, double x)
    {
        var value = Math.Pow(x, -rate);
        return (value, -Math.Log(x) * value);
    }

    private static CurveName Name(double level, double line, FittedCurve exponential, FittedCurve power, double span)
    {
        // With less than one e-fold over all sessions the asymptote is a guess: then only the straight line is shown.
        var exponentialKnown = !exponential.RateAtLimit && exponential.Rate * (span + 1) >= 1;
        var (e, p) = (
            exponentialKnown ? exponential.Criteria.Bayes : double.PositiveInfinity,
            power.RateAtLimit ? double.PositiveInfinity : power.Criteria.Bayes);
        var curve = Math.Min(e, p);
        if (level - Math.Min(curve, line) <= InformationCriteria.Clearly)
        {
            return CurveName.Level;
        }

        return line - curve <= InformationCriteria.Clearly ? CurveName.StraightLine
            : Math.Abs(e - p) <= InformationCriteria.Clearly ? CurveName.CannotTell
            : e < p ? CurveName.Exponential : CurveName.Power;
    }
}
