using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>The lane in inches. Across grows to the left of a bowler who looks downlane, so writing goes against it.</summary>
internal readonly struct LanePlane : IPlane<LanePoint>
{
    /// <inheritdoc/>
    public XY Right => new(-1, 0);

    /// <inheritdoc/>
    public XY Up => new(0, 1);

    /// <inheritdoc/>
    public XY Of(LanePoint point) => new(point.Across.Value, point.Down.Value * 12);
}
