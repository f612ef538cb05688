namespace AimTrainer.Display;

/// <summary>A plane that scenes are drawn in.</summary>
internal interface IPlane<TPoint>
    where TPoint : struct
{
    /// <summary>Its points in its own unit, the same along both axes.</summary>
    XY Of(TPoint point);

    /// <summary>The way writing goes.</summary>
    XY Right { get; }

    /// <summary>The way letters stand.</summary>
    XY Up { get; }
}
