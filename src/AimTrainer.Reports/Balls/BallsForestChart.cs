using AimTrainer.Analysis;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace AimTrainer.Reports;

/// <summary>Differences with their limits against the margin: each counted in its own margin, so that boards, feet and degrees share an axis.</summary>
internal static class BallsForestChart
{
    private const double Least = 2;
    private const double Most = 8;

    /// <summary>How high a row is, points.</summary>
    public const int RowHeight = 17;

    /// <summary>The findings that have limits and are judged, ball by ball.</summary>
    public static IReadOnlyList<(string Ball, MeasureComparison Found)> Rows(BallsReport report, string line) =>
    [
        .. report.Comparison.Lines.Where(one => string.Equals(one.Line, line, StringComparison.OrdinalIgnoreCase))
            .SelectMany(one => one.Measures.Where(found => found.Measure.Claimed && found.Best.Difference.Low is not null).Select(found => (one.Ball, found))),
    ];

    public static ReportChart Of(BallsReport report, string line, int width, int height)
    {
        const string title = "Differences against the margin";
        var rows = Rows(report, line);
        if (rows.Count == 0)
        {
            var nothing = report.Comparison.Problem is { } problem ? $"Not known: {problem}." : "Not known: too few good throws of two balls at this line.";
            return new ReportChart(title, nothing, nothing, width, height, null);
        }

        var several = rows.Select(row => row.Ball).Distinct().Count() > 1;
        var margins = string.Join(", ", rows.Select(row => row.Found.Measure.Unit).Distinct()
            .Select(unit => $"{ComparisonWords.Unit(unit)} {report.Margins.Of(unit).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)}"));
        var caption = $"{(several ? "Each ball" : rows[0].Ball)} less {report.Comparison.Reference}, adjusted where it could be, with 95 % limits. Each is counted in its own margin "
            + $"({margins}); grey: smaller than the margin. A mark at the edge lies beyond it.";
        var told = string.Join(" ", rows.Select(row => $"{row.Ball}, {ComparisonWords.Name(row.Found.Measure.Name)}: "
            + $"{ComparisonWords.Amount(row.Found.Measure, row.Found.Best.Difference)}, {ComparisonWords.Verdict(row.Found.Verdict)}."));
        return new ReportChart(title, caption, $"{caption} {told}", width, height, Fill);

        void Fill(Plot plot)
        {
            var reach = Math.Clamp(rows.Max(row => Math.Max(Math.Abs(row.Found.Best.Difference.Low!.Value), Math.Abs(row.Found.Best.Difference.High!.Value))
                / report.Margins.Of(row.Found.Measure.Unit)), Least, Most);
            var band = plot.Add.Rectangle(-1, 1, 0.4, rows.Count + 0.6);
            band.FillColor = Color.FromHex("#dfe4e9");
            band.LineWidth = 0;
            var none = plot.Add.Line(0, 0.4, 0, rows.Count + 0.6);
            none.Color = Color.FromHex(ReportColours.Quiet);
            none.LineWidth = 0.75f;
            none.MarkerSize = 0;
            for (var i = 0; i < rows.Count; i++)
            {
                var (y, found) = (rows.Count - i, rows[i].Found);
                var (margin, difference) = (report.Margins.Of(found.Measure.Unit), found.Best.Difference);
                var (colour, shape, _) = BallsInk.Of(Place(report, rows[i].Ball));
                var limits = plot.Add.Line(Held(difference.Low!.Value / margin), y, Held(difference.High!.Value / margin), y);
                limits.Color = colour;
                limits.LineWidth = 1.4f;
                limits.MarkerSize = 0;
                var mark = plot.Add.Marker(Held(difference.Value!.Value / margin), y, shape, 6, colour);
                mark.MarkerStyle.LineWidth = 1.3f;
                var unit = found.Measure.Unit;
                var text = plot.Add.Text(
                    $"{ComparisonWords.Number(unit, difference.Value.Value)} ({ComparisonWords.Number(unit, difference.Low.Value)} to {ComparisonWords.Number(unit, difference.High.Value)})",
                    reach * 1.12,
                    y);
                text.LabelFontSize = 7.5f;
                text.LabelFontName = ReportFonts.Family;
                text.LabelFontColor = Color.FromHex(ReportColours.Ink);
                text.LabelAlignment = Alignment.MiddleLeft;
            }

            plot.Axes.Left.TickGenerator = new NumericManual(
                [.. Enumerable.Range(0, rows.Count).Select(i => (double)(rows.Count - i))],
                [.. rows.Select(row => several ? $"{Short(row.Ball)}: {Name(row.Found.Measure)}" : Name(row.Found.Measure))]);
            double[] ticks = [.. Enumerable.Range((int)-reach, (2 * (int)reach) + 1).Where(tick => reach <= 4 || tick % 2 == 0).Select(tick => (double)tick)];
            plot.Axes.Bottom.TickGenerator = new NumericManual(ticks, [.. ticks.Select(ReportWords.Short)]);
            plot.XLabel("margins");
            plot.HideGrid();
            plot.Axes.SetLimits(-reach * 1.06, reach * 2.4, 0.4, rows.Count + 0.6);

            double Held(double value) => Math.Clamp(value, -reach, reach);
        }
    }

    private static int Place(BallsReport report, string ball) => report.Balls.TakeWhile(one => !string.Equals(one, ball, StringComparison.OrdinalIgnoreCase)).Count();

    private static string Name(ComparedMeasure measure) => measure.Name switch
    {
        "entryBoard" => "at the pins, boards",
        "breakpointBoard" => "breakpoint, boards",
        "breakpointFeet" => "breakpoint, ft",
        "entryAngle" => "direction, degrees",
        "sharpness" => "sharpness, degrees a foot",
        "speedAtPins" => "speed at the pins, mph",
        _ => $"at {measure.Distance} ft, boards",
    };

    private static string Short(string ball) => ball.Length <= 12 ? ball : ball[..11] + "…";
}
