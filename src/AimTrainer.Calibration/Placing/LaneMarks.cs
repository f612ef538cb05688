using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>The marks that a lane has of its own, in the order in which they are best placed.</summary>
public static class LaneMarks
{
    /// <summary>
    /// Corners first, because four marks far apart settle the map best; then arrows, marks beyond them, and dots. The corners of the
    /// pin deck are taken level with the head pin, 60 ft from the foul line, where the edges of the lane pass it.
    /// </summary>
    /// <param name="lane">The lane.</param>
    /// <param name="stretch">What the projector is to draw; marks outside of it are left out. Null takes all.</param>
    public static ValueList<PlacedMark> Of(LaneProfile lane, LaneStretch? stretch)
    {
        List<PlacedMark> marks =
        [
            Corner("foul line, right edge of the lane", 0, 0), Corner("foul line, left edge of the lane", lane.Width.Value, 0),
            Corner("pin deck, left edge level with the head pin", lane.Width.Value, LaneProfile.HeadPin.Value),
            Corner("pin deck, right edge level with the head pin", 0, LaneProfile.HeadPin.Value),
        ];
        marks.AddRange([.. Numbered(lane, MarkerKind.Arrow, "arrow"), .. Numbered(lane, MarkerKind.Downlane, "downlane mark"), .. Numbered(lane, MarkerKind.Dot, "dot")]);
        return marks.Where(mark => stretch is null || (mark.Lane.Down >= stretch.From && mark.Lane.Down <= stretch.To)).ToValueList();
    }

    private static IEnumerable<PlacedMark> Numbered(LaneProfile lane, MarkerKind kind, string name) => lane.Markers.AsEnumerable().Where(marker => marker.Kind == kind)
        .OrderBy(marker => marker.FromRight).ThenBy(marker => marker.Distance)
        .Select((marker, i) => new PlacedMark(
            string.Create(CultureInfo.InvariantCulture, $"{name} {i + 1} from the right"),
            new LanePoint(Inches.FromInches(LaneScale.InchesOf(marker.FromRight.Boards, lane.Width)), marker.Distance)));

    private static PlacedMark Corner(string name, double across, double feet) => new(name, new LanePoint(Inches.FromInches(across), Feet.FromFeet(feet)));
}
