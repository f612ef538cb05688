namespace AimTrainer.Calibration;

/// <summary>Whether a projector can show a target as it is graded.</summary>
public enum ShowingResult
{
    /// <summary>It can.</summary>
    Honest,

    /// <summary>Its pixels are too large for a target so narrow.</summary>
    TooNarrow,

    /// <summary>Some of the target lies beside the picture.</summary>
    BesidePicture,

    /// <summary>The target lies outside of the stretch of lane that the projector draws.</summary>
    OutsideStretch,
}
