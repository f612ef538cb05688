using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>How much of the lane a projector's picture covers.</summary>
internal static class VisibleStretch
{
    private const double StepFeet = 0.5;

    /// <summary>The stretch of a map, made longer at either end as far as some of the lane there lies in the picture, within <see cref="LaneStretch.Whole"/>.</summary>
    public static LaneStretch Of(ProjectorMap map, Inches laneWidth)
    {
        var (from, to) = (map.Stretch.From.Value, map.Stretch.To.Value);
        while (from - StepFeet >= LaneStretch.Whole.From.Value && IsLit(map, from - StepFeet, laneWidth))
        {
            from -= StepFeet;
        }

        while (to + StepFeet <= LaneStretch.Whole.To.Value && IsLit(map, to + StepFeet, laneWidth))
        {
            to += StepFeet;
        }

        return map.Stretch with { From = Feet.FromFeet(from), To = Feet.FromFeet(to) };
    }

    private static bool IsLit(ProjectorMap map, double feet, Inches laneWidth)
    {
        var (any, before) = (false, true);
        for (var part = 0; part <= 4; part++)
        {
            var pixel = map.TryPixelOf(new LanePoint(Inches.FromInches(laneWidth.Value * part / 4), Feet.FromFeet(feet)));
            before &= pixel is not null;
            any |= pixel is { } lit && map.Picture.Contains(lit);
        }

        return any && before;
    }
}
