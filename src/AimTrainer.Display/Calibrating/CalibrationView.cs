using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>A calibration at a moment, as it is shown.</summary>
/// <param name="Task">What is calibrated.</param>
/// <param name="Placing">The marks.</param>
/// <param name="Monitor">The monitor and mode that the map will hold for; null in an ordinary window, where nothing is saved.</param>
/// <param name="SavedFile">The file of the map that was accepted; null while none was saved.</param>
/// <param name="Trouble">What keeps a map from being saved now, in words; null when nothing does.</param>
/// <param name="Version">Counts the changes.</param>
public sealed record CalibrationView(CalibrationTask Task, MarkPlacing Placing, MonitorMode? Monitor, string? SavedFile, string? Trouble, long Version);
