using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>The left column: which mark is to be placed, where it is on the lane, and how good the fit is.</summary>
internal static class MarkColumn
{
    private const double MapTop = 0.3, MapBottom = 0.93, MapWidth = 0.1;

    public static void Draw(PictureInk ink, CalibrationView view, double left, double width, Theme theme)
    {
        var (s, placing, colours) = (ink.Scale, view.Placing, theme.Lane);
        ink.Write(Invariant($"Station {view.Task.Place.Station}, projector {view.Task.Place.Projector}"), left, 0.05 * s, 0.02 * s, colours.Trail);
        ink.Write(Invariant($"Mark {placing.Current + 1} of {placing.Marks.Count}{State(placing.Mark)}"), left, 0.115 * s, 0.032 * s, colours.Rim, bold: true);
        ink.Words(placing.Mark.Name, left, 0.175 * s, width, 0.028 * s, colours.Text, bold: true, most: 2);
        DrawMap(ink, view, left, theme);
        DrawFigures(ink, placing, left + ((MapWidth + 0.065) * s), width - ((MapWidth + 0.065) * s), theme);
    }

    private static string State(PlacedMark mark) => mark.Pixel is not null ? ", set" : mark.Skipped ? ", left out" : "";

    /// <summary>The lane from above, the foul line below: a disc for a mark that is set, a ring for one that is open, a stroke for one left out.</summary>
    private static void DrawMap(PictureInk ink, CalibrationView view, double left, Theme theme)
    {
        var (s, placing, colours) = (ink.Scale, view.Placing, theme.Lane);
        var (top, bottom, right) = (MapTop * s, MapBottom * s, left + (MapWidth * s));
        ScreenPoint At(PlacedMark mark) => new(
            right - (MapWidth * s * mark.Lane.Across.Value / view.Task.Lane.Width.Value), bottom - ((bottom - top) * mark.Lane.Down.Value / Domain.LaneProfile.HeadPin.Value));
        ink.Add(new Shape<ScreenPoint>.Stroke([new(left, top), new(right, top), new(right, bottom), new(left, bottom)], 0.002 * s, colours.Next, Closed: true));
        ink.Write("foul line", (left + right) / 2, bottom + (0.032 * s), 0.018 * s, colours.Trail, align: TextAlign.Middle);
        foreach (var mark in placing.Marks)
        {
            var at = At(mark);
            if (mark.Skipped)
            {
                ink.Line(0.002 * s, colours.Path, new(at.X - (0.005 * s), at.Y), new(at.X + (0.005 * s), at.Y));
            }
            else if (mark.Pixel is not null)
            {
                ink.Disc(at, 0.006 * s, colours.Hit);
            }
            else
            {
                ink.Disc(at, 0.005 * s, colours.Trail, 0.0015 * s);
            }
        }

        var here = At(placing.Mark);
        ink.Line(0.003 * s, colours.Rim, new(right + (0.05 * s), here.Y), new(here.X + (0.016 * s), here.Y));
        ink.Disc(here, 0.014 * s, colours.Rim, 0.003 * s);
    }

    private static void DrawFigures(PictureInk ink, MarkPlacing placing, double left, double room, Theme theme)
    {
        var (s, colours, fit) = (ink.Scale, theme.Lane, placing.Preview?.Fit);
        var baseline = 0.32 * s;
        void Figure(string name, string value, double size = 0.024)
        {
            ink.Write(name, left, baseline, 0.018 * s, colours.Trail);
            ink.Write(TextFit.Cut(value, room, size * s, true), left, baseline + (0.042 * s), size * s, colours.Text, bold: true);
            baseline += 0.098 * s;
        }

        Figure("crosshair", Invariant($"{placing.Crosshair.X:0.0}, {placing.Crosshair.Y:0.0}"), 0.02);
        Figure("marks set", placing.SetCount.ToString(System.Globalization.CultureInfo.InvariantCulture));
        if (fit is not null)
        {
            var quality = fit.Quality;
            var four = quality.SigmaPixels is null;
            Figure("error, worst mark", four ? "unknown" : Invariant($"{quality.WorstPixels:0.00} px"));
            Figure("across the lane", four || quality.WorstBoards is not { } boards ? "unknown" : Invariant($"{boards:0.00} board"));
            Figure("between the marks", quality.LeaveOneOutRmsPixels is { } without ? Invariant($"{without:0.00} px") : "unknown");
            if (four)
            {
                ink.Words("Four marks always fit: place more to see the error.", left, baseline, room, 0.018 * s, colours.Trail);
            }
        }
        else if (placing.Preview is { } refused)
        {
            ink.Write("no map yet", left, baseline, 0.026 * s, colours.Miss, bold: true);
            ink.Words(refused.Refusals[0].Found, left, baseline + (0.04 * s), room, 0.018 * s, colours.Text, most: 14);
            baseline += 0.098 * s;
        }
        else
        {
            ink.Words("Four marks that are far apart give a map.", left, baseline, room, 0.018 * s, colours.Trail);
        }

        if (fit is not null && placing.Fitting.DistortionTerms > 0)
        {
            ink.Write(Invariant($"lens terms: {placing.Fitting.DistortionTerms}"), left, (MapBottom * s) - (0.03 * s), 0.018 * s, colours.Trail);
        }

        if (placing.QuarterTurns > 0)
        {
            ink.Write(Invariant($"keys turned {90 * placing.QuarterTurns} deg"), left, MapBottom * s, 0.018 * s, colours.Trail);
        }
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
