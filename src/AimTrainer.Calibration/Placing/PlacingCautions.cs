using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>What can hurt somebody while a projector is calibrated. Every view of a calibration shows these.</summary>
public static class PlacingCautions
{
    /// <summary>The cautions, a sentence each.</summary>
    public static ValueList<string> All { get; } =
    [
        "Nobody walks past the foul line to place, check or calibrate a target: the lane is oiled. Everything is done from the approach side.",
        "Do not look into the beam, and let nobody else: look at the lane.",
    ];
}
