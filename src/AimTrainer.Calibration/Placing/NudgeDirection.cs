namespace AimTrainer.Calibration;

/// <summary>Where the crosshair is moved to, as the person who looks at the lane sees it.</summary>
public enum NudgeDirection
{
    /// <summary>To the left.</summary>
    Left,

    /// <summary>To the right.</summary>
    Right,

    /// <summary>Up: away from the person.</summary>
    Up,

    /// <summary>Down: toward the person.</summary>
    Down,
}
