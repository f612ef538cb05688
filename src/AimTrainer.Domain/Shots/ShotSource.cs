namespace AimTrainer.Domain;

/// <summary>Where a shot came from.</summary>
public enum ShotSource
{
    /// <summary>Typed in by a person.</summary>
    Typed,

    /// <summary>Read from a file.</summary>
    File,

    /// <summary>Sent by a sensor or another program.</summary>
    Sensor,

    /// <summary>Invented by the simulated bowler. Never mixed with real records unmarked.</summary>
    Simulated,
}
