using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>
/// The stretch of lane one projector draws. Where two overlap, each is dimmed by a weight that is linear in the distance and taken in
/// linear light, so that together they are even: from nothing at the outer end of its overlap to full at the inner end.
/// </summary>
/// <param name="From">Where it starts, in feet from the foul line (negative on the approach).</param>
/// <param name="To">Where it ends.</param>
/// <param name="NearOverlap">Length of the overlap with the projector before it; 0 for none.</param>
/// <param name="FarOverlap">Length of the overlap with the projector after it; 0 for none.</param>
public sealed record LaneStretch(Feet From, Feet To, Feet NearOverlap, Feet FarOverlap)
{
    /// <summary>All of it, with some approach and the pin deck, shared with nobody.</summary>
    public static LaneStretch Whole { get; } = new(Feet.FromFeet(-15), Feet.FromFeet(63), Feet.FromFeet(0), Feet.FromFeet(0));

    /// <summary>This projector's part of the light at a distance, 0 to 1.</summary>
    public double WeightAt(Feet down)
    {
        if (down.Value < From.Value || down.Value > To.Value)
        {
            return 0;
        }

        var near = NearOverlap.Value > 0 ? (down.Value - From.Value) / NearOverlap.Value : 1;
        var far = FarOverlap.Value > 0 ? (To.Value - down.Value) / FarOverlap.Value : 1;
        return Math.Clamp(Math.Min(near, far), 0, 1);
    }
}
