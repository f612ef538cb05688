using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>The map that a projector is to be used with, or why there is none.</summary>
/// <param name="Map">The map; null when there is none that can be trusted.</param>
/// <param name="Why">Why there is none, for the bowler's end of the lane; null when there is one, or none was ever made.</param>
public sealed record MapChoice(ProjectorMap? Map, string? Why);
