namespace AimTrainer.Calibration;

/// <summary>Why marks give no map.</summary>
public enum FitRefusalReason
{
    /// <summary>Fewer marks than the map has need of.</summary>
    TooFewMarks,

    /// <summary>A pixel outside of the picture.</summary>
    OffPicture,

    /// <summary>Two marks at one place, on the lane or in the picture.</summary>
    DuplicateMarks,

    /// <summary>All marks, or all but one, lie on one line, on the lane or in the picture: no four of them settle a map.</summary>
    InALine,

    /// <summary>The picture is the lane as in a mirror.</summary>
    Mirrored,

    /// <summary>Two marks have each other's pixels.</summary>
    SwappedMarks,

    /// <summary>The only map through the marks turns the lane, or the picture, over on itself.</summary>
    FoldsTheLane,

    /// <summary>The marks do not agree with one another.</summary>
    ResidualOverLimit,

    /// <summary>The marks lie so that they do not tell a bent lens from another place of the projector.</summary>
    DistortionUnclear,
}
