namespace AimTrainer.Analysis;

/// <summary>The first values of a series, which later ones are held against.</summary>
/// <param name="Mean">Their mean.</param>
/// <param name="Spread">Their standard deviation (n - 1), more than 0.</param>
/// <param name="Rest">The values after them.</param>
internal sealed record ControlBaseline(double Mean, double Spread, double[] Rest)
{
    public static ControlBaseline? Of(IReadOnlyList<TrendPoint> points, int length)
    {
        var (_, values) = TrendSeries.Columns(points);
        if (values.Length <= length)
        {
            return null;
        }

        var first = values.AsSpan(0, length);
        var spread = Math.Sqrt(TrendSeries.SquaresAboutMean(first) / (length - 1));

        // Equal values whose mean was rounded have no spread.
        return spread > 1e-12 * Math.Abs(TrendSeries.Mean(first)) ? new ControlBaseline(TrendSeries.Mean(first), spread, values[length..]) : null;
    }
}
