namespace AimTrainer.Calibration;

/// <summary>Where a calibration stands.</summary>
public enum PlacingPhase
{
    /// <summary>Marks are being placed.</summary>
    Placing,

    /// <summary>The map was accepted.</summary>
    Accepted,

    /// <summary>Given up: the map that was used before stays.</summary>
    Abandoned,
}
