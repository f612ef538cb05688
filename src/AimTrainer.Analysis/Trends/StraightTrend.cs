using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>The least-squares straight line through a series, with what is uncertain about it.</summary>
/// <remarks>Standard formulas with sums about the means, in two passes, so that a far origin costs no digits.</remarks>
/// <param name="Count">How many points, n; 2 or more.</param>
/// <param name="Slope">Change of the value for each session.</param>
/// <param name="Intercept">The line's value at session 0.</param>
/// <param name="SlopeError">Standard error of the slope; null below three points.</param>
/// <param name="InterceptError">Standard error of the intercept; null below three points.</param>
/// <param name="ResidualSquares">Sum of the squared residuals.</param>
/// <param name="ResidualSpread">Residual standard deviation, n - 2 degrees of freedom; null below three points.</param>
/// <param name="RSquared">Share of the squares about the mean that the line takes away; null when all values are equal.</param>
/// <param name="P">Two-sided p-value of the slope; null below three points, or when the line fits exactly.</param>
/// <param name="MeanSession">Mean of the sessions.</param>
/// <param name="SessionSquares">Σ(session - mean)².</param>
public sealed record StraightTrend(
    int Count,
    double Slope,
    double Intercept,
    double? SlopeError,
    double? InterceptError,
    double ResidualSquares,
    double? ResidualSpread,
    double? RSquared,
    double? P,
    double MeanSession,
    double SessionSquares)
{
    /// <summary>The line through a series; null below two points.</summary>
    /// <exception cref="ArgumentException">A number is not finite, or the sessions do not grow.</exception>
    public static StraightTrend? Of(IReadOnlyList<TrendPoint> points)
    {
        var (sessions, values) = TrendSeries.Columns(points);
        return Of(sessions, values);
    }

    /// <summary>The line's value at a session.</summary>
    public double At(double session) => Intercept + (Slope * session);

    /// <summary>Limits of the line itself at a session; null below three points.</summary>
    /// <param name="session">Where.</param>
    /// <param name="confidence">More than 0, less than 1.</param>
    public TrendLimits? LineAt(double session, double confidence = 0.95) => Limits(session, 0, confidence);

    /// <summary>Limits of one more value at a session; null below three points.</summary>
    /// <inheritdoc cref="LineAt"/>
    public TrendLimits? NextAt(double session, double confidence = 0.95) => Limits(session, 1, confidence);

    /// <summary>The same for columns whose sessions may be in any order, and some equal.</summary>
    internal static StraightTrend? Of(ReadOnlySpan<double> sessions, ReadOnlySpan<double> values)
    {
        var n = values.Length;
        if (n < 2)
        {
            return null;
        }

        var (meanX, meanY) = (TrendSeries.Mean(sessions), TrendSeries.Mean(values));
        var (xx, xy, yy) = (0.0, 0.0, 0.0);
        for (var i = 0; i < n; i++)
        {
            var (x, y) = (sessions[i] - meanX, values[i] - meanY);
            (xx, xy, yy) = (xx + (x * x), xy + (x * y), yy + (y * y));
        }

        var slope = xy / xx;
        var residuals = 0.0;
        for (var i = 0; i < n; i++)
        {
            var residual = values[i] - meanY - (slope * (sessions[i] - meanX));
            residuals += residual * residual;
        }

        double? spread = n > 2 ? Math.Sqrt(residuals / (n - 2)) : null;
        var slopeError = spread / Math.Sqrt(xx);
        return new StraightTrend(
            n,
            slope,
            meanY - (slope * meanX),
            slopeError,
            spread * Math.Sqrt((1.0 / n) + (meanX * meanX / xx)),
            residuals,
            spread,
            yy > 0 ? 1 - (residuals / yy) : null,
            slopeError > 0 ? 2 * new StudentT(n - 2).Cdf(-Math.Abs(slope / slopeError.Value)) : null,
            meanX,
            xx);
    }

    private TrendLimits? Limits(double session, double ofOneMore, double confidence)
    {
        TrendSeries.CheckShare(confidence, nameof(confidence));
        if (ResidualSpread is not { } spread)
        {
            return null;
        }

        var away = session - MeanSession;
        var reach = new StudentT(Count - 2).Quantile((1 + confidence) / 2) * spread
            * Math.Sqrt(ofOneMore + (1.0 / Count) + (away * away / SessionSquares));
        return new TrendLimits(At(session) - reach, At(session) + reach);
    }
}
