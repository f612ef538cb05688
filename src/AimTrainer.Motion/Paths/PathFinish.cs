namespace AimTrainer.Motion;

/// <summary>Where a path ends.</summary>
public enum PathFinish
{
    /// <summary>At the head pin's distance, 60 ft, with the middle of the ball on the lane.</summary>
    Pins,

    /// <summary>In a gutter: the middle of the ball left the boards.</summary>
    Gutter,
}
