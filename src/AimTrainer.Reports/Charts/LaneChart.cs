using AimTrainer.Domain;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace AimTrainer.Reports;

/// <summary>The lane as the bowler sees it, with targets, crossings and ellipses.</summary>
internal static class LaneChart
{
    /// <summary>The names of the targets in the picture.</summary>
    public const string Letters = "ABCDEF";

    // How far up and down from its target a crossing is drawn, by the order thrown, feet.
    private const double Reach = 2.2;
    private const double LowestBoard = 0.5;
    private const double HighestBoard = 39.5;
    private const double PinsFeet = 60;

    public static ReportChart Of(BowlerReport report, int width, int height)
    {
        var targets = Drawn(report);
        var known = targets.Sum(target => target.Measured);
        var caption = known == 0
            ? "No crossing to show."
            : $"The newest {ReportWords.Count(report.Lane.Shots, "shot")}, as the bowler sees the lane. Dot: held; open diamond: missed; drawn around the target's "
                + "distance, the newest farthest up. Bar: the target as shown last. Ellipse: across, the next shot lies inside 95 times in 100 if it scatters like these "
                + $"(from {LaneEllipse.Fewest} shots on); its height means nothing.";
        var told = string.Join(" ", targets.Select((target, i) => $"{Letters[i]}: {Told(target, report.Hand)}"));
        var alternative = known == 0 ? "The lane without a crossing." : $"The lane with crossings of {targets.Count} targets. {told}";
        return new ReportChart("The lane", caption, alternative, width, height, Fill);

        void Fill(Plot plot)
        {
            var boards = targets.SelectMany(target => target.Crossings.AsEnumerable().Select(crossing => crossing.Board)).ToList();
            var low = boards.Count > 0 && boards.Min() < LowestBoard ? boards.Min() - 1 : LowestBoard - 1;
            var high = boards.Count > 0 && boards.Max() > HighestBoard ? boards.Max() + 1 : HighestBoard + 1;
            Surface(plot, report.Lane.Marks);
            for (var i = 0; i < targets.Count; i++)
            {
                Target(plot, targets[i], Letters[i]);
            }

            plot.Axes.Bottom.TickGenerator = new NumericManual([1, 5, 10, 15, 20, 25, 30, 35, 39], ["1", "5", "10", "15", "20", "25", "30", "35", "39"]);
            plot.Axes.Left.TickGenerator = new NumericManual([0, 15, 30, 45, 60], ["foul line", "15 ft", "30 ft", "45 ft", "pins"]);
            plot.XLabel("board");
            plot.HideGrid();
            if (report.Hand == Hand.Right)
            {
                plot.Axes.SetLimits(high, low, -1, PinsFeet + 1);
            }
            else
            {
                plot.Axes.SetLimits(low, high, -1, PinsFeet + 1);
            }
        }
    }

    /// <summary>The targets that are drawn.</summary>
    public static IReadOnlyList<LaneTarget> Drawn(BowlerReport report) =>
        [.. report.Lane.Targets.AsEnumerable().Where(target => target.Measured > 0).Take(LanePicture.MostDrawn)];

    private static string Told(LaneTarget target, Hand hand) =>
        $"{ReportWords.Target(target)}, {ReportWords.Count(target.Measured, "crossing")}, mean {ReportWords.LimitedSide(target.MeanMissBoards, hand)}, "
            + $"spread {ReportWords.Limited(target.SpreadBoards)} boards.";

    private static void Surface(Plot plot, ValueList<LaneMark> marks)
    {
        var lane = plot.Add.Rectangle(LowestBoard, HighestBoard, 0, PinsFeet);
        lane.FillColor = Color.FromHex(ReportColours.Lane);
        lane.LineColor = Color.FromHex(ReportColours.Quiet);
        lane.LineWidth = 0.75f;
        (string Kind, MarkerShape Shape, float Size)[] kinds =
            [("arrow", MarkerShape.FilledTriangleUp, 4.5f), ("dot", MarkerShape.FilledCircle, 2.2f), ("downlane", MarkerShape.FilledSquare, 3f)];
        foreach (var (kind, shape, size) in kinds)
        {
            var these = marks.Where(mark => mark.Kind == kind).ToList();
            if (these.Count > 0)
            {
                plot.Add.Markers(these.Select(mark => mark.Board).ToArray(), these.Select(mark => mark.DistanceFeet).ToArray(), shape, size, Color.FromHex("#b9ad9a"));
            }
        }
    }

    private static void Target(Plot plot, LaneTarget target, char letter)
    {
        var (centre, half) = (target.CentreBoard, target.WidthBoards / 2);
        Bar(Colors.White, Colors.Transparent);
        Crossings(plot, target, crossing => crossing.Held == true, MarkerShape.FilledCircle, ReportColours.Blue);
        Crossings(plot, target, crossing => crossing.Held != true, MarkerShape.OpenDiamond, ReportColours.Orange);
        Bar(Colors.Transparent, Color.FromHex(ReportColours.Ink));
        var middle = centre + (target.MeanMissBoards.Value ?? 0);
        if (target.Ellipse is { LowBoard: { } low, HighBoard: { } high })
        {
            var ellipse = plot.Add.Ellipse((low + high) / 2, target.DistanceFeet, (high - low) / 2, Reach + 0.9);
            ellipse.FillColor = Colors.Transparent;
            ellipse.LineColor = Color.FromHex(ReportColours.Ink);
            ellipse.LineWidth = 1.1f;
        }

        var label = plot.Add.Text(letter.ToString(), middle, target.DistanceFeet + Reach + 2.4);
        label.LabelFontSize = 10;
        label.LabelFontColor = Color.FromHex(ReportColours.Ink);
        label.LabelAlignment = Alignment.MiddleCenter;
        label.LabelStyle.Font = ReportFonts.Bold; // A name and a weight are not looked at once the plot has its font.
        label.LabelBackgroundColor = Color.FromHex(ReportColours.Lane);
        label.LabelPadding = 1;

        // Its fill lies under the crossings, its outline over them.
        void Bar(Color fill, Color outline)
        {
            var bar = plot.Add.Rectangle(centre - half, centre + half, target.DistanceFeet - 0.5, target.DistanceFeet + 0.5);
            bar.FillColor = fill;
            bar.LineColor = outline;
            bar.LineWidth = 1.1f;
        }
    }

    private static void Crossings(Plot plot, LaneTarget target, Func<LaneCrossing, bool> which, MarkerShape shape, string colour)
    {
        var last = Math.Max(1, target.Crossings.Count - 1);
        var these = target.Crossings.AsEnumerable()
            .Select((crossing, i) => (Crossing: crossing, Y: target.DistanceFeet + (target.Crossings.Count == 1 ? 0 : Reach * ((2.0 * i / last) - 1))))
            .Where(one => which(one.Crossing)).ToList();
        if (these.Count == 0)
        {
            return;
        }

        var size = target.Crossings.Count > 60 ? 3f : 4.2f;
        var markers = plot.Add.Markers(these.Select(one => one.Crossing.Board).ToArray(), these.Select(one => one.Y).ToArray(), shape, size, Color.FromHex(colour));
        markers.MarkerStyle.LineWidth = 0.9f;
    }
}
