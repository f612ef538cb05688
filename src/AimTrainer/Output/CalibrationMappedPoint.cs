using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Output;

/// <summary>A point that a map was asked about, with the answer.</summary>
/// <param name="BoardFromRight">Its board from the right edge; null when the pixel lights no place of the lane's plane.</param>
/// <param name="Feet">Its distance; null as above.</param>
/// <param name="X">Its pixel; null when the projector cannot light it.</param>
/// <param name="Y">Its pixel; null as above.</param>
/// <param name="InPicture">Whether the pixel lies in the picture.</param>
/// <param name="OnLane">Whether the place lies between the edges of the lane, from the foul line to the head pin.</param>
/// <param name="InStretch">Whether the place lies in the stretch that the projector draws.</param>
/// <param name="Why">Why there is no answer; null when there is one.</param>
internal sealed record CalibrationMappedPoint(double? BoardFromRight, double? Feet, double? X, double? Y, bool InPicture, bool OnLane, bool InStretch, string? Why)
{
    public static CalibrationMappedPoint Of(MapQuestion question, SavedMap saved)
    {
        var place = question.Lane ?? saved.Map.LanePointOf(question.Pixel!.Value);
        var pixel = question.Pixel ?? saved.Map.TryPixelOf(place!.Value);
        var why = place is null ? "this pixel lights no place of the lane: it lies above the horizon"
            : pixel is null ? "the projector cannot light this place: it lies behind it" : null;
        return new CalibrationMappedPoint(
            place is { } at ? CalibrationText.Board(at, saved.LaneWidth) : null,
            place?.Down.Value, pixel?.X, pixel?.Y,
            pixel is { } lit && saved.Map.Picture.Contains(lit),
            place is { } on && on.Across.Value >= 0 && on.Across.Value <= saved.LaneWidth.Value && on.Down.Value >= 0 && on.Down <= LaneProfile.HeadPin,
            place is { } within && within.Down >= saved.Map.Stretch.From && within.Down <= saved.Map.Stretch.To,
            why);
    }
}
