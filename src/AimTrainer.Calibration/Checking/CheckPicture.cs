using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>
/// The lane drawn on the lane: edges, every fifth board, every 5 ft, arrows and dots. Somebody behind the foul line sees at a glance
/// whether the drawn marks lie on the real ones.
/// </summary>
public static class CheckPicture
{
    private const int EveryBoards = 5;
    private const double EveryFeet = 5;

    /// <summary>Half the width and half the length of a drawn arrow, in inches: 1.25 in by 6 in. Source: the lane rules' largest, from memory.</summary>
    private const double ArrowHalfWidth = 0.625, ArrowHalfLength = 3;

    /// <summary>Radius of a drawn dot, in inches: 3/4 in across. Source: the lane rules' largest, from memory.</summary>
    private const double DotRadius = 0.375;

    /// <summary>Half the size of the cross on a mark beyond the arrows, in inches; such marks differ in shape, so none is imitated.</summary>
    private const double CrossHalf = 3;

    private const int DotSides = 16;

    /// <summary>The lines within a stretch of lane.</summary>
    /// <param name="lane">The lane with its marks.</param>
    /// <param name="stretch">What the projector draws.</param>
    public static ValueList<CheckLine> Of(LaneProfile lane, LaneStretch stretch)
    {
        if (stretch.To.Value <= 0 || stretch.From >= LaneProfile.HeadPin || stretch.To <= stretch.From)
        {
            return [];
        }

        List<CheckLine> lines = [Down(CheckLineKind.Edge, "", 0.5, lane, stretch), Down(CheckLineKind.Edge, "", LaneProfile.BoardCount + 0.5, lane, stretch)];
        for (var board = EveryBoards; board < LaneProfile.BoardCount; board += EveryBoards)
        {
            lines.Add(Down(CheckLineKind.Board, board.ToString(CultureInfo.InvariantCulture), board, lane, stretch));
        }

        for (var feet = Math.Ceiling(Math.Max(stretch.From.Value, 0) / EveryFeet) * EveryFeet; feet <= Math.Min(stretch.To.Value, LaneProfile.HeadPin.Value); feet += EveryFeet)
        {
            lines.Add(feet == 0
                ? Across(CheckLineKind.FoulLine, "foul line", 0, lane)
                : Across(CheckLineKind.Distance, string.Create(CultureInfo.InvariantCulture, $"{feet} ft"), feet, lane));
        }

        lines.AddRange(lane.Markers.AsEnumerable().Where(marker => marker.Distance >= stretch.From && marker.Distance <= stretch.To).SelectMany(marker => Mark(marker, lane)));
        return lines.ToValueList();
    }

    private static CheckLine Down(CheckLineKind kind, string label, double board, LaneProfile lane, LaneStretch stretch)
    {
        var across = LaneScale.InchesOf(board, lane.Width);
        var (from, to) = (Math.Max(stretch.From.Value, 0), Math.Min(stretch.To.Value, LaneProfile.HeadPin.Value));
        var whole = Math.Max((int)Math.Ceiling(to - from), 1);
        var points = Enumerable.Range(0, whole + 1).Select(i => new LanePoint(Inches.FromInches(across), Feet.FromFeet(from + ((to - from) * i / whole))));
        return new CheckLine(kind, label, points.ToValueList());
    }

    private static CheckLine Across(CheckLineKind kind, string label, double feet, LaneProfile lane) => new(
        kind, label,
        Enumerable.Range(0, LaneProfile.BoardCount + 1)
            .Select(i => new LanePoint(Inches.FromInches(lane.Width.Value * i / LaneProfile.BoardCount), Feet.FromFeet(feet))).ToValueList());

    private static IEnumerable<CheckLine> Mark(LaneMarker marker, LaneProfile lane)
    {
        var (across, down) = (LaneScale.InchesOf(marker.FromRight.Boards, lane.Width), marker.Distance.Value * 12);
        switch (marker.Kind)
        {
            case MarkerKind.Arrow:
                return
                [
                    new CheckLine(CheckLineKind.Arrow, "",
                    [
                        Point(across, down + ArrowHalfLength), Point(across - ArrowHalfWidth, down - ArrowHalfLength),
                        Point(across + ArrowHalfWidth, down - ArrowHalfLength), Point(across, down + ArrowHalfLength),
                    ]),
                ];
            case MarkerKind.Dot:
                var round = Enumerable.Range(0, DotSides + 1).Select(i => 2 * Math.PI * (i % DotSides) / DotSides)
                    .Select(turn => Point(across + (DotRadius * Math.Cos(turn)), down + (DotRadius * Math.Sin(turn))));
                return [new CheckLine(CheckLineKind.Dot, "", round.ToValueList())];
            default:
                return
                [
                    new CheckLine(CheckLineKind.Downlane, "", [Point(across - CrossHalf, down), Point(across + CrossHalf, down)]),
                    new CheckLine(CheckLineKind.Downlane, "", [Point(across, down - CrossHalf), Point(across, down + CrossHalf)]),
                ];
        }
    }

    private static LanePoint Point(double acrossInches, double downInches) => new(Inches.FromInches(acrossInches), Feet.FromFeet(downInches / 12));
}
