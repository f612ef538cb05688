namespace AimTrainer.Analysis;

/// <summary>From what the straight part of a shot's path is known.</summary>
public enum StraightSource
{
    /// <summary>The laydown and one crossing or more in the straight part.</summary>
    LaydownAndCrossings,

    /// <summary>Two crossings or more in the straight part; the laydown is worked out.</summary>
    Crossings,

    /// <summary>One place in the straight part, and the launch angle that was reported.</summary>
    PlaceAndReportedAngle,
}
