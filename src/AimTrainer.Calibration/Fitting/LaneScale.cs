using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>
/// Boards from the right edge and inches across, unrounded: a <see cref="Board"/> keeps four decimals, which is plenty for a grade but
/// would be seen in a map that is held to a millionth of a pixel.
/// </summary>
public static class LaneScale
{
    /// <summary>Inches from the right edge of a board counted from there.</summary>
    public static double InchesOf(double boardFromRight, Inches laneWidth) => (boardFromRight - 0.5) * laneWidth.Value / LaneProfile.BoardCount;

    /// <summary>The board, counted from the right edge, so many inches from it.</summary>
    public static double BoardOf(double acrossInches, Inches laneWidth) => BoardsIn(acrossInches, laneWidth) + 0.5;

    /// <summary>How many boards a width is.</summary>
    public static double BoardsIn(double inches, Inches laneWidth) => inches * LaneProfile.BoardCount / laneWidth.Value;

    /// <summary>A point of the lane in words.</summary>
    internal static string Words(LanePoint point, Inches laneWidth) => string.Create(
        CultureInfo.InvariantCulture, $"board {BoardOf(point.Across.Value, laneWidth):0.##} from the right at {point.Down.Value:0.##} ft");

    /// <summary>A pixel in words.</summary>
    internal static string Words(ProjectorPixel pixel) => string.Create(CultureInfo.InvariantCulture, $"pixel ({pixel.X:0.##}, {pixel.Y:0.##})");
}
