namespace AimTrainer.Motion;

/// <summary>Where a pocket window is held against the ball.</summary>
public enum WindowPlace
{
    /// <summary>Where the ball first touches the head pin.</summary>
    Contact,

    /// <summary>At the 60 ft plane of the head pin's middle: 0.25 to 0.55 boards more for a ball that comes in.</summary>
    At60Feet,
}
