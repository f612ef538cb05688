using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace AimTrainer.Reports;

/// <summary>The ten-shot spread of the newest sessions beside the published bands.</summary>
internal static class TenShotChart
{
    private const int Newest = 12;

    public static ReportChart Of(BowlerReport report, int width, int height)
    {
        const string title = "Ten-shot spread";
        var tens = report.TenShots;
        if (tens.Sessions.Count == 0)
        {
            var why = $"Not known: {tens.Why}.";
            return new ReportChart(title, why, why, width, height, null);
        }

        var shown = tens.Sessions.AsEnumerable().TakeLast(Newest).ToList();
        var caption = $"Ten shots in a row at board {ReportWords.Short(tens.CentreBoard!.Value)} at the arrows; latest {ReportWords.Two(shown[^1].SpreadBoards)} boards. "
            + "Dashed: bands of one coaching guide by average, a reference and no verdict; it names no sample and measures outer edges, here it is ball centres.";
        var told = $"{caption} {string.Join(", ", shown.Select(ten => $"{ReportWords.Day(ten.At)}: {ReportWords.Two(ten.SpreadBoards)}"))}.";
        return new ReportChart(title, caption, told, width, height, Fill);

        void Fill(Plot plot)
        {
            var ink = Color.FromHex(ReportColours.Ink);
            string[] names = ["elite", "220", "200", "180", "160"];
            for (var i = 0; i < tens.Bands.Count; i++)
            {
                var up = tens.Bands[i].UpToBoards;
                var line = plot.Add.Line(0.4, up, shown.Count + 0.45, up);
                line.LineColor = Color.FromHex(ReportColours.Quiet);
                line.LineWidth = 0.75f;
                line.LinePattern = LinePattern.DenselyDashed;
                line.MarkerSize = 0;
                var label = plot.Add.Text(i < names.Length ? names[i] : "", shown.Count + 0.55, up);
                label.LabelFontSize = 7;
                label.LabelFontColor = Color.FromHex(ReportColours.Quiet);
                label.LabelAlignment = Alignment.MiddleLeft;
                label.LabelFontName = ReportFonts.Family;
            }

            double[] places = [.. Enumerable.Range(1, shown.Count).Select(i => (double)i)];
            var values = plot.Add.Scatter(places, shown.Select(ten => ten.SpreadBoards).ToArray(), ink);
            values.MarkerShape = MarkerShape.FilledSquare;
            values.MarkerSize = 5;
            values.LineWidth = 1;
            var top = Math.Max(5, shown.Max(ten => ten.SpreadBoards) * 1.08);
            plot.Axes.SetLimits(0.4, shown.Count + (0.18 * (shown.Count + 3)) + 0.3, 0, top);
            plot.Axes.Bottom.TickGenerator = new NumericManual(places, [.. places.Select(place => place.ToString(CultureInfo.InvariantCulture))]);
            plot.XLabel(shown.Count < tens.Sessions.Count ? $"newest {Newest} sessions" : "session");
            plot.YLabel("boards");
            plot.Grid.MajorLineWidth = 0;
        }
    }
}
