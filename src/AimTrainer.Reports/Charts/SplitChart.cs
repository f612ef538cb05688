using AimTrainer.Analysis;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace AimTrainer.Reports;

/// <summary>Which share of the scatter each cause makes up.</summary>
internal static class SplitChart
{
    // Limits of a share may pass 0 and 1 by far when there are few shots; the axis does not follow them.
    private const double Lowest = -0.5;
    private const double Highest = 1.5;

    public static ReportChart Of(BowlerReport report, int width, int height)
    {
        const string title = "Why the shots scatter";
        if (report.Causes is not { Shares: { } shares, Target: { } target })
        {
            var why = $"Not known: {report.Causes.Why}.";
            return new ReportChart(title, why, why, width, height, null);
        }

        (string Name, BoundedEstimate Share)[] parts = [("laydown", shares.LaydownShare), ("angle", shares.AngleShare), ("ball", shares.BeyondShare)];
        var figures = string.Join(", ", parts.Select(part =>
            $"{part.Name} {ReportWords.Percent(part.Share.Value ?? 0)} ({ReportWords.Percent(part.Share.Low ?? 0)} to {ReportWords.Percent(part.Share.High ?? 0)})"));
        var caption = $"Shares of the scatter {ReportWords.Place(target.Distance.Value)} on the line {report.Causes.Line} (board@feet), {report.Causes.Split} shots; "
            + "whisker: 95 %. Ball: what it did beyond the straight part.";
        return new ReportChart(title, caption, $"{caption} {figures}.", width, height, Fill);

        void Fill(Plot plot)
        {
            var blue = Color.FromHex(ReportColours.Blue);
            for (var i = 0; i < parts.Length; i++)
            {
                var (y, share) = (parts.Length - i, parts[i].Share);
                var value = Math.Clamp(share.Value ?? 0, Lowest, Highest);
                var bar = plot.Add.Bar(new Bar { Position = y, Value = value, Size = 0.55, FillColor = blue.WithAlpha(0.45), LineColor = blue });
                bar.Horizontal = true;
                var whisker = plot.Add.Line(Math.Clamp(share.Low ?? 0, Lowest, Highest), y, Math.Clamp(share.High ?? 0, Lowest, Highest), y);
                whisker.LineColor = Color.FromHex(ReportColours.Ink);
                whisker.LineWidth = 1.5f;
                whisker.MarkerShape = MarkerShape.VerticalBar;
                whisker.MarkerSize = 7;
                whisker.MarkerLineColor = Color.FromHex(ReportColours.Ink);
            }

            var zero = plot.Add.VerticalLine(0, 0.75f, Color.FromHex(ReportColours.Ink));
            zero.LinePattern = LinePattern.Solid;
            plot.Axes.Left.TickGenerator = new NumericManual([3, 2, 1], ["laydown", "angle", "ball"]);
            plot.Axes.Bottom.TickGenerator = new NumericManual([-0.5, 0, 0.5, 1, 1.5], ["-50", "0", "50", "100", "150"]);
            plot.Axes.Left.MajorTickStyle.Length = 0;
            plot.Grid.YAxisStyle.IsVisible = false;
            plot.XLabel("share, %");
            var low = Math.Min(-0.06, parts.Min(part => Math.Clamp(part.Share.Low ?? 0, Lowest, Highest)) - 0.06);
            var high = Math.Max(1.06, parts.Max(part => Math.Clamp(part.Share.High ?? 0, Lowest, Highest)) + 0.06);
            plot.Axes.SetLimits(low, high, 0.4, 3.6);
        }
    }
}
