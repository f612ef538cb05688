using AimTrainer.Domain;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace AimTrainer.Reports;

/// <summary>Where the balls ran on one line, as the bowler sees the lane: every good throw thin, the mean of each ball over them.</summary>
internal static class BallsPathChart
{
    private const double LowestBoard = 0.5;
    private const double HighestBoard = 39.5;
    private const double PinsFeet = 60;
    private const double RoomBoards = 2.5;

    // As thrown, more lines than these are one blot.
    private const int MostThrows = 40;

    public static ReportChart Of(BallsReport report, string line, int width, int height)
    {
        var balls = report.Balls.Select((ball, i) => (Ball: ball, Place: i, Good: report.Good(ball, line).ToList())).Where(one => one.Good.Count > 0).ToList();
        var drawn = balls.Where(ball => ball.Good.Exists(one => Seen(one).Count > 1)).ToList();
        var legend = string.Join("; ", balls.Select(ball => $"{ball.Ball}: {BallsWords.Mark(ball.Place)}, {ReportWords.Count(ball.Good.Count, "good throw")}"));
        if (drawn.Count == 0)
        {
            var nothing = balls.Count == 0 ? "No good throw at this line." : "No throw was seen at two places of this line.";
            return new ReportChart("Paths", nothing, nothing, width, height, null);
        }

        var caption = $"{legend}. Thin: each throw{(drawn.Exists(ball => ball.Good.Count > MostThrows) ? $" (the newest {MostThrows})" : "")}, straight between the places "
            + "where it was seen; marks: the mean of a ball's good throws, as thrown, not adjusted.";
        var told = string.Join(" ", drawn.Select(ball => $"{ball.Ball}: " + string.Join(
            ", ", report.MeanPath(ball.Ball, line).Select(place => $"board {ReportWords.One(place.Board)} at {ReportWords.Short(place.Feet)} ft")) + "."));
        return new ReportChart("Paths", caption, $"{caption} {told}", width, height, Fill);

        void Fill(Plot plot)
        {
            var lane = plot.Add.Rectangle(LowestBoard, HighestBoard, 0, PinsFeet);
            lane.FillColor = Color.FromHex(ReportColours.Lane);
            lane.LineColor = Color.FromHex(ReportColours.Quiet);
            lane.LineWidth = 0.75f;
            foreach (var (_, place, good) in drawn)
            {
                foreach (var seen in good.TakeLast(MostThrows).Select(Seen).Where(seen => seen.Count > 1))
                {
                    var path = plot.Add.ScatterLine(Boards(seen), Feet(seen));
                    path.Color = BallsInk.Of(place).Colour.WithAlpha(0.35);
                    path.LineWidth = 0.5f;
                }
            }

            foreach (var (ball, place, _) in drawn)
            {
                var (colour, shape, pattern) = BallsInk.Of(place);
                var mean = report.MeanPath(ball, line);
                if (mean.Count > 1)
                {
                    var path = plot.Add.ScatterLine(Boards(mean), Feet(mean));
                    path.Color = colour;
                    path.LineWidth = 1.1f;
                    path.LinePattern = pattern;
                }

                if (mean.Count > 0)
                {
                    var marks = plot.Add.Markers(Boards(mean), Feet(mean), shape, 5.5f, colour);
                    marks.MarkerStyle.LineWidth = 1.2f;
                }
            }

            var boards = drawn.SelectMany(ball => ball.Good.TakeLast(MostThrows)).SelectMany(Seen).Select(place => place.Board).ToList();
            var (low, high) = (Math.Max(LowestBoard, boards.Min() - RoomBoards), Math.Min(HighestBoard, boards.Max() + RoomBoards));
            double[] ticks = [.. new double[] { 1, 5, 10, 15, 20, 25, 30, 35, 39 }.Where(board => board >= low && board <= high)];
            plot.Axes.Bottom.TickGenerator = new NumericManual(ticks, [.. ticks.Select(ReportWords.Short)]);
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

    private static List<BallsPlace> Seen(BallsThrow one) => [.. one.Places.Where(place => !place.Misread)];

    private static double[] Boards(IReadOnlyList<BallsPlace> places) => [.. places.Select(place => place.Board)];

    private static double[] Feet(IReadOnlyList<BallsPlace> places) => [.. places.Select(place => place.Feet)];
}
