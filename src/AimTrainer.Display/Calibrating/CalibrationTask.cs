using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>What is to be calibrated.</summary>
/// <param name="Place">Which projector.</param>
/// <param name="Lane">Its lane, whose own marks are placed.</param>
/// <param name="Stretch">What the projector is to draw; null takes what its picture covers.</param>
public sealed record CalibrationTask(MapPlace Place, LaneProfile Lane, LaneStretch? Stretch);
