namespace AimTrainer.Domain;

/// <summary>How well it is known where the ball crossed a target.</summary>
public enum CrossingKind
{
    /// <summary>Seen within half a foot of the target.</summary>
    Measured,

    /// <summary>Worked out between two crossings on either side, at most 15 ft apart.</summary>
    Interpolated,

    /// <summary>Not known: never graded, never counted.</summary>
    Unknown,
}
