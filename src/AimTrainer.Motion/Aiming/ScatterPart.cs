namespace AimTrainer.Motion;

/// <summary>What scatters from throw to throw, in the order of a covariance.</summary>
public enum ScatterPart
{
    /// <summary>Where the ball touches the lane.</summary>
    Laydown,

    /// <summary>Its direction there.</summary>
    LaunchAngle,

    /// <summary>Its speed.</summary>
    Speed,

    /// <summary>Its revs.</summary>
    Revs,
}
