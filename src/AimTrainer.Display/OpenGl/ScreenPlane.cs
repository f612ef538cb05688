namespace AimTrainer.Display;

/// <summary>A screen in picture heights, y down.</summary>
internal readonly struct ScreenPlane : IPlane<ScreenPoint>
{
    /// <inheritdoc/>
    public XY Right => new(1, 0);

    /// <inheritdoc/>
    public XY Up => new(0, -1);

    /// <inheritdoc/>
    public XY Of(ScreenPoint point) => new(point.X, point.Y);
}
