namespace AimTrainer.Analysis;

/// <summary>What a measure of a path is counted in.</summary>
public enum MeasureUnit
{
    /// <summary>Boards, positive inside.</summary>
    Boards,

    /// <summary>Feet past the foul line.</summary>
    Feet,

    /// <summary>Degrees, positive into the pocket.</summary>
    Degrees,

    /// <summary>Degrees of direction a foot, positive inward.</summary>
    DegreesPerFoot,

    /// <summary>Miles per hour.</summary>
    MilesPerHour,
}
