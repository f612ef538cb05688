using ScottPlot;

namespace AimTrainer.Reports;

/// <summary>How balls are told apart on paper: by shape and line first, and by colours whose greys differ too.</summary>
internal static class BallsInk
{
    // Relative luminance 0.03, 0.26, 0.14 and 0.45: a copy in greys still tells them apart.
    private static readonly (string Colour, MarkerShape Shape, LinePattern Line)[] Inks =
    [
        ("#12304a", MarkerShape.FilledCircle, LinePattern.Solid),
        ("#c9772b", MarkerShape.OpenDiamond, LinePattern.Dashed),
        ("#5a6672", MarkerShape.OpenSquare, LinePattern.Dotted),
        ("#8fb3a0", MarkerShape.OpenTriangleUp, LinePattern.Solid),
    ];

    /// <summary>By a ball's place among the balls.</summary>
    public static (Color Colour, MarkerShape Shape, LinePattern Line) Of(int place)
    {
        var (colour, shape, line) = Inks[place % Inks.Length];
        return (Color.FromHex(colour), shape, line);
    }
}
