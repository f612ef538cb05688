using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>Whether a projector can show a target as it is graded, with the numbers.</summary>
/// <param name="Result">Whether.</param>
/// <param name="WidthPixels">How wide the target is in the picture, square to its edges; null when that cannot be said.</param>
/// <param name="NeededPixels">How wide it must be.</param>
/// <param name="PixelBoards">What a pixel is across the lane there, in boards; null when that cannot be said.</param>
/// <param name="NarrowestBoards">The narrowest target that can be shown there, in boards; null when that cannot be said.</param>
/// <param name="Found">All that in words.</param>
/// <param name="WouldHelp">What would help, the simplest first; empty when it can be shown.</param>
public sealed record TargetShowing(
    ShowingResult Result, double? WidthPixels, double NeededPixels, double? PixelBoards, double? NarrowestBoards, string Found, ValueList<string> WouldHelp)
{
    /// <summary>Judges a target at a place counted from the bowler's own edge.</summary>
    /// <param name="map">The map.</param>
    /// <param name="target">The target.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="hand">The bowler's hand.</param>
    /// <param name="settings">How fine is fine enough.</param>
    public static TargetShowing Of(ProjectorMap map, Target target, LaneProfile lane, Hand hand, ShowingSettings settings) => Of(
        map, lane.PointOf(target.OutsideEdge, target.Distance, hand), lane.PointOf(target.InsideEdge, target.Distance, hand), lane.Width, settings);

    /// <summary>Judges a target at the middle of the lane.</summary>
    /// <param name="map">The map.</param>
    /// <param name="width">How wide.</param>
    /// <param name="distance">Where along the lane.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="settings">How fine is fine enough.</param>
    public static TargetShowing AtTheMiddle(ProjectorMap map, BoardOffset width, Feet distance, LaneProfile lane, ShowingSettings settings)
    {
        var (middle, half) = (lane.Width.Value / 2, width.Boards / 2 * lane.BoardWidth.Value);
        return Of(map, new LanePoint(Inches.FromInches(middle - half), distance), new LanePoint(Inches.FromInches(middle + half), distance), lane.Width, settings);
    }

    private static TargetShowing Of(ProjectorMap map, LanePoint first, LanePoint second, Inches laneWidth, ShowingSettings settings)
    {
        var distance = first.Down;
        var boards = Math.Abs(LaneScale.BoardsIn(second.Across.Value - first.Across.Value, laneWidth));
        var target = FormattableString.Invariant($"a target of {boards:0.##} board{(Math.Round(boards, 2) == 1 ? "" : "s")} at {distance} ft");
        if (distance < map.Stretch.From || distance > map.Stretch.To)
        {
            return new TargetShowing(
                ShowingResult.OutsideStretch, null, settings.LeastPixels, null, null,
                $"{target} lies outside of the stretch that this projector draws, {map.Stretch.From} to {map.Stretch.To} ft",
                ["a target within the stretch", "a second projector for the rest of the lane"]);
        }

        if (map.TryPixelOf(first) is not { } a || map.TryPixelOf(second) is not { } b || !map.Picture.Contains(a) || !map.Picture.Contains(b))
        {
            return new TargetShowing(
                ShowingResult.BesidePicture, null, settings.LeastPixels, null, null, $"{target} lies beside the picture of this projector, in whole or in part",
                ["turn the projector until its picture covers the target, and calibrate again", "a shorter lens (larger picture)", "a second projector for the rest of the lane"]);
        }

        var pixel = map.PixelSizeAt(new LanePoint(Inches.FromInches((first.Across.Value + second.Across.Value) / 2), distance));
        var pixelBoards = LaneScale.BoardsIn(pixel.AcrossInches, laneWidth);
        var (width, narrowest) = (boards / pixelBoards, settings.LeastPixels * pixelBoards);
        var numbers = FormattableString.Invariant($"{width:0.0} pixels wide, needed {settings.LeastPixels:0.##}; ")
            + FormattableString.Invariant($"a pixel there is {pixelBoards:0.00} board across and {pixel.AlongInches:0.0} in along the lane");
        if (width >= settings.LeastPixels)
        {
            return new TargetShowing(ShowingResult.Honest, width, settings.LeastPixels, pixelBoards, narrowest, $"{target} is shown as it is graded: {numbers}", []);
        }

        var times = settings.LeastPixels / width;
        return new TargetShowing(
            ShowingResult.TooNarrow, width, settings.LeastPixels, pixelBoards, narrowest, $"{target} cannot be shown as it is graded: {numbers}",
            [
                FormattableString.Invariant($"a target of at least {Math.Ceiling(narrowest * 10) / 10:0.0} boards there"),
                FormattableString.Invariant($"a nearer mount: {1 / times:0.00} of the way from lens to target, or less"),
                FormattableString.Invariant($"a longer lens (smaller picture): {times:0.0} times the throw ratio, or more"),
                FormattableString.Invariant($"a second projector for the lane around {distance} ft"),
            ]);
    }
}
