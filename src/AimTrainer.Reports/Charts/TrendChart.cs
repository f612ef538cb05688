using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace AimTrainer.Reports;

/// <summary>The spread of the tests over sessions, with the trend and its band.</summary>
internal static class TrendChart
{
    private const int MostTicks = 6;

    public static ReportChart Of(BowlerReport report, int width, int height)
    {
        const string title = "Getting better?";
        var points = report.Trend.Points;
        if (points.Count == 0)
        {
            var why = $"Not known: {report.Trend.Why}.";
            return new ReportChart(title, why, why, width, height, null);
        }

        var hasBand = points[0].TrendLowBoards is not null;
        var caption = $"Spread of the test blocks {report.Trend.Place}, one point a session; whisker: 95 %."
            + (hasBand ? " Line and band: straight trend with its 95 % band. \"Improved\" is said by the rule only, not by the band." : " A band from 3 sessions on.");
        var told = $"{caption} {points.Count} sessions; first {ReportWords.Two(points[0].SpreadBoards)} boards on {ReportWords.Day(points[0].At)}, "
            + $"last {ReportWords.Two(points[^1].SpreadBoards)} boards on {ReportWords.Day(points[^1].At)}.";
        return new ReportChart(title, caption, told, width, height, Fill);

        void Fill(Plot plot)
        {
            var (ink, blue) = (Color.FromHex(ReportColours.Ink), Color.FromHex(ReportColours.Blue));
            double[] sessions = [.. points.Select(point => (double)point.Session)];
            if (hasBand)
            {
                var band = plot.Add.FillY(sessions, points.Select(point => point.TrendLowBoards!.Value).ToArray(), points.Select(point => point.TrendHighBoards!.Value).ToArray());
                band.FillColor = blue.WithAlpha(0.18);
                band.LineWidth = 0;
                band.MarkerSize = 0;
                var line = plot.Add.ScatterLine(sessions, points.Select(point => point.TrendBoards!.Value).ToArray(), blue);
                line.LineWidth = 1.5f;
            }

            var whiskers = points.Where(point => point.SpreadLowBoards is not null).ToList();
            if (points.Count <= 60)
            {
                foreach (var point in whiskers)
                {
                    var whisker = plot.Add.Line(point.Session, point.SpreadLowBoards!.Value, point.Session, point.SpreadHighBoards!.Value);
                    whisker.LineColor = Color.FromHex(ReportColours.Quiet);
                    whisker.LineWidth = 0.75f;
                    whisker.MarkerSize = 0;
                }
            }

            plot.Add.Markers(sessions, points.Select(point => point.SpreadBoards).ToArray(), MarkerShape.FilledCircle, points.Count > 40 ? 3 : 4.5f, ink);
            var top = Math.Max(points.Max(point => point.SpreadBoards), points.Count <= 60 && whiskers.Count > 0 ? whiskers.Max(point => point.SpreadHighBoards!.Value) : 0);
            plot.Axes.SetLimits(0.4, points.Count + 0.6, 0, Math.Max(top * 1.08, 0.2));
            var step = Math.Max(1, (int)Math.Ceiling(points.Count / (double)MostTicks));
            double[] ticks = [.. Enumerable.Range(0, ((points.Count - 1) / step) + 1).Select(i => 1.0 + (i * step))];
            plot.Axes.Bottom.TickGenerator = new NumericManual(ticks, [.. ticks.Select(tick => tick.ToString(CultureInfo.InvariantCulture))]);
            plot.XLabel("session with a test");
            plot.YLabel("spread, boards");
            plot.Grid.XAxisStyle.IsVisible = false;
        }
    }
}
