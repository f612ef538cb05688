namespace AimTrainer.Domain;

/// <summary>Where a speed was measured: a ball loses 2 to 4 mph on its way, so speeds from different places cannot be compared.</summary>
public enum SpeedPlace
{
    /// <summary>As the ball leaves the hand.</summary>
    Release,

    /// <summary>Over the whole lane.</summary>
    Average,

    /// <summary>Just before the pins.</summary>
    Pins,

    /// <summary>Nobody said where.</summary>
    Unknown,
}
