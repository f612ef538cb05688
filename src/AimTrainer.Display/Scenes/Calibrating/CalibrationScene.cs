using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>
/// The picture in which somebody places marks: the crosshair, the mark to place, the fit so far with its errors, what to do, the keys and the
/// cautions. In the projector's own picture; the crosshair's middle lies exactly on its pixel.
/// </summary>
public static class CalibrationScene
{
    private const double ColumnWidth = 0.42, Margin = 0.03;

    /// <summary>Length of an arm of the crosshair, from its middle.</summary>
    private const double Arm = 0.05;

    /// <summary>The light of a column that the crosshair is in: what is aimed at must be seen.</summary>
    private const double Faint = 0.3;

    /// <summary>Builds it; after the map was accepted the check picture over it.</summary>
    /// <param name="view">The calibration.</param>
    /// <param name="theme">The colours.</param>
    public static Scene<ScreenPoint> Build(CalibrationView view, Theme theme)
    {
        var placing = view.Placing;
        if (placing is { Phase: PlacingPhase.Accepted, Preview.Fit: { } accepted })
        {
            return CheckScene.Build(
                accepted.Map, view.Task.Lane, theme, view.SavedFile is null ? "The map is not saved" : "The map is saved",
                ["Yes: Enter closes this window.", "No: U goes back to the marks and puts the map aside.", placing.Said]);
        }

        if (placing is { Checking: true, Preview.Fit: { } checkedFit })
        {
            return CheckScene.Build(checkedFit.Map, view.Task.Lane, theme, "Check picture", ["Whatever is pressed goes back to the marks.", placing.Said]);
        }

        var ink = new PictureInk(placing.Fitting.Picture);
        if (placing.Preview?.Fit is { } fit)
        {
            CheckLines.Draw(ink, fit.Map, view.Task.Lane, theme.Lane);
        }

        var (s, crosshair) = (ink.Scale, ink.At(placing.Crosshair));
        var width = ColumnWidth * s;
        var (near, far) = (Margin * s, ink.Aspect - (Margin * s) - width);
        DrawHairlines(ink, crosshair, theme.Lane.Path);
        DrawColumn(ink, placing, near, width, crosshair, column => MarkColumn.Draw(column, view, near, width, theme));
        DrawColumn(ink, placing, far, width, crosshair, column => AdviceColumn.Draw(column, view, far, width, theme));
        DrawMarks(ink, placing, theme.Lane);
        DrawCrosshair(ink, crosshair, theme.Lane);
        return ink.Scene();
    }

    private static void DrawColumn(PictureInk ink, MarkPlacing placing, double left, double width, ScreenPoint crosshair, Action<PictureInk> draw)
    {
        var column = new PictureInk(placing.Fitting.Picture);
        var gap = 0.015 * ink.Scale;
        column.Box(left - gap, 0, left + width + gap, 1, LanePalette.Ground);
        draw(column);
        ink.Add(column, crosshair.X > left - (2 * gap) && crosshair.X < left + width + (2 * gap) ? Faint : 1);
    }

    private static void DrawMarks(PictureInk ink, MarkPlacing placing, LanePalette colours)
    {
        foreach (var mark in placing.Marks)
        {
            if (mark.Pixel is { } pixel)
            {
                ink.Disc(ink.At(pixel), 0.011 * ink.Scale, colours.Hit, 0.0025 * ink.Scale);
            }
        }
    }

    /// <summary>Lines over the whole picture, under what is written, to see where the crosshair is.</summary>
    private static void DrawHairlines(PictureInk ink, ScreenPoint at, Colour colour)
    {
        const double Hair = 0.0012;
        var arm = Arm * ink.Scale;
        ink.Line(Hair, colour, new(0, at.Y), new(at.X - arm, at.Y));
        ink.Line(Hair, colour, new(at.X + arm, at.Y), new(ink.Aspect, at.Y));
        ink.Line(Hair, colour, new(at.X, 0), new(at.X, at.Y - arm));
        ink.Line(Hair, colour, new(at.X, at.Y + arm), new(at.X, 1));
    }

    /// <summary>A cross with a free middle to aim with, and a dot of about a pixel on the place itself.</summary>
    private static void DrawCrosshair(PictureInk ink, ScreenPoint at, LanePalette colours)
    {
        const double Free = 0.012, Line = 0.0028;
        var s = ink.Scale;
        foreach (var (x, y) in (ReadOnlySpan<(int X, int Y)>)[(-1, 0), (1, 0), (0, -1), (0, 1)])
        {
            ink.Line(Line * s, colours.Rim, new(at.X + (x * Free * s), at.Y + (y * Free * s)), new(at.X + (x * Arm * s), at.Y + (y * Arm * s)));
        }

        ink.Disc(at, 0.0015 * s, colours.Rim);
    }
}
