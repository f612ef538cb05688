using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>A lane for demonstrations and tests. Invented: nobody measured it, and it is no center's pattern.</summary>
public static class InventedLane
{
    private const double PatternFeet = 40;

    /// <summary>
    /// A house pattern of 40 ft: much oil between boards 12 and 28, a tenth of it outside of boards 5 and 35, less downlane from 12 ft on;
    /// friction 0.03 in the oil and 0.20 on dry boards.
    /// </summary>
    /// <remarks>Source: the invented house map of the physics reference, section 5 (its frictions: ranges of section 6).</remarks>
    public static LaneSurface House() => new(OilPattern.FromRows(
        [Row(0, 1), Row(12, 1), Row(24, 0.75), Row(34, 0.4), Row(PatternFeet, 0)], inSteps: false), 0.20, 0.03, 6);

    private static (double Feet, ValueList<double> Oil) Row(double feet, double share) =>
        (feet, Enumerable.Range(1, LaneProfile.BoardCount).Select(board => share * Units(Math.Min(board, LaneProfile.BoardCount + 1 - board))).ToValueList());

    /// <summary>6 units up to board 5, 60 from board 13 on, a smooth rise between.</summary>
    private static double Units(int fromTheEdge)
    {
        const double Low = 6, High = 60, From = 5, Over = 8;
        var rise = Math.Clamp((fromTheEdge - From) / Over, 0, 1);
        return Low + ((High - Low) * rise * rise * (3 - (2 * rise)));
    }
}
