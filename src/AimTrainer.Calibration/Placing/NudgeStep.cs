namespace AimTrainer.Calibration;

/// <summary>How far the crosshair is moved at once.</summary>
public enum NudgeStep
{
    /// <summary>To set it on a mark.</summary>
    Fine,

    /// <summary>To come near a mark.</summary>
    Coarse,
}
