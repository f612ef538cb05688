using AimTrainer.Domain;
using AimTrainer.Motion;

namespace AimTrainer.Web;

/// <summary>The oil of a lane, to be drawn.</summary>
/// <param name="PatternFeet">Where the last oil ends; null when there is none, or when it reaches the pins.</param>
/// <param name="ExitBoard">Exit board of such a pattern, as common practice; null when its length has none.</param>
/// <param name="WidthInches">Width of the 39 boards.</param>
/// <param name="ArrowsFeet">Where the board at the arrows is taken.</param>
/// <param name="OilFriction">Friction of a board under much oil.</param>
/// <param name="DryFriction">Friction of a dry board.</param>
/// <param name="MostUnits">Most oil on any board.</param>
/// <param name="Units">Units of oil by whole feet, 0 to 60: on boards 1 to 39 from the right edge.</param>
public sealed record LaneMap(
    double? PatternFeet, double? ExitBoard, double WidthInches, double ArrowsFeet, double OilFriction, double DryFriction, double MostUnits, ValueList<ValueList<double>> Units)
{
    /// <summary>The map of a lane.</summary>
    public static LaneMap Of(LaneSurface lane)
    {
        var units = Enumerable.Range(0, (int)LaneSurface.EndFeet + 1)
            .Select(feet => Enumerable.Range(1, LaneProfile.BoardCount).Select(board => Math.Round(lane.OilAt(feet, board), 2)).ToValueList()).ToValueList();
        return new LaneMap(
            lane.PatternFeet is { } pattern ? Math.Round(pattern, 2) : null,
            lane.PatternFeet is { } length ? Exit(length) : null,
            lane.WidthInches,
            lane.ArrowsFeet,
            lane.OilFriction,
            lane.DryFriction,
            units.Max(row => row.Max()),
            units);
    }

    private static double? Exit(double feet) =>
        feet is >= PlanReader.ShortestPattern and <= PlanReader.LongestPattern ? LineArithmetic.ExitOfPattern(Feet.FromMeasurement(feet)).Board.Boards : null;
}
