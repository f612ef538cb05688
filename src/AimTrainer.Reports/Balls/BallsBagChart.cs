using ScottPlot;

namespace AimTrainer.Reports;

/// <summary>Where each ball of the bag fits: how far down it turns, and how sharply, with limits.</summary>
internal static class BallsBagChart
{
    private static readonly (Alignment Side, float Right, float Down)[] Sides =
        [(Alignment.LowerLeft, 4, -3), (Alignment.UpperRight, -4, 3), (Alignment.UpperLeft, 4, 3), (Alignment.LowerRight, -4, -3)];

    public static ReportChart Of(BallsReport report, int width, int height)
    {
        const string title = "Where each ball fits";
        var lines = report.Lines;
        var known = report.Comparison.Balls.Where(place => place.BreakpointFeet.Value is not null && place.SharpnessDegreesPerFoot.Value is not null).ToList();
        if (known.Count == 0)
        {
            const string nothing = "Not known: no ball has both a measured breakpoint and a sharpness (three places around its breakpoint).";
            return new ReportChart(title, nothing, nothing, width, height, null);
        }

        var several = lines.Count > 1;
        var caption = "As thrown, from these throws only: how far down each ball turned, and how sharply; crosses: 95 % limits of the mean."
            + (several ? " The letter is the line." : "")
            + (known.Count < report.Comparison.Balls.Count ? " Balls without both are not in it." : "");
        return new ReportChart(title, caption, $"{caption} {string.Join(" ", report.Fits.AsEnumerable())}", width, height, Fill);

        void Fill(Plot plot)
        {
            for (var i = 0; i < known.Count; i++)
            {
                var place = known[i];
                var (feet, sharp) = (place.BreakpointFeet, place.SharpnessDegreesPerFoot);
                var ball = report.Balls.TakeWhile(one => !string.Equals(one, place.Ball, StringComparison.OrdinalIgnoreCase)).Count();
                var (colour, shape, _) = BallsInk.Of(ball);
                Whisker(feet.Low, feet.High, sharp.Value, sharp.Value);
                Whisker(feet.Value, feet.Value, sharp.Low, sharp.High);
                var mark = plot.Add.Marker(feet.Value!.Value, sharp.Value!.Value, shape, 7, colour);
                mark.MarkerStyle.LineWidth = 1.4f;
                var letter = BallsWords.Letter(lines.TakeWhile(line => !string.Equals(line, place.Line, StringComparison.OrdinalIgnoreCase)).Count());
                var text = plot.Add.Text(several ? $"{Short(place.Ball)}, {letter}" : Short(place.Ball), feet.Value.Value, sharp.Value.Value);
                text.LabelFontSize = 8;
                text.LabelFontName = ReportFonts.Family;
                text.LabelFontColor = Color.FromHex(ReportColours.Ink);

                // To four sides in turn: balls that turn alike would write over each other.
                var (alignment, right, down) = Sides[i % Sides.Length];
                (text.LabelAlignment, text.OffsetX, text.OffsetY) = (alignment, right, down);

                void Whisker(double? left, double? right, double? bottom, double? top)
                {
                    if (left is { } l && right is { } r && bottom is { } b && top is { } t)
                    {
                        var whisker = plot.Add.Line(l, b, r, t);
                        whisker.Color = colour;
                        whisker.LineWidth = 1;
                        whisker.MarkerSize = 0;
                    }
                }
            }

            var feets = known.SelectMany(place => new[] { place.BreakpointFeet.Low, place.BreakpointFeet.High, place.BreakpointFeet.Value }).OfType<double>().ToList();
            var sharps = known.SelectMany(place => new[] { place.SharpnessDegreesPerFoot.Low, place.SharpnessDegreesPerFoot.High, place.SharpnessDegreesPerFoot.Value })
                .OfType<double>().ToList();
            var (roomX, roomY) = (Math.Max(0.5, 0.12 * (feets.Max() - feets.Min())), Math.Max(0.004, 0.16 * (sharps.Max() - sharps.Min())));
            plot.Axes.SetLimits(feets.Min() - roomX, feets.Max() + (2 * roomX), sharps.Min() - roomY, sharps.Max() + roomY);
            plot.XLabel("turns at, ft past the foul line");
            plot.YLabel("degrees a foot");
        }
    }

    private static string Short(string ball) => ball.Length <= 16 ? ball : ball[..15] + "…";
}
