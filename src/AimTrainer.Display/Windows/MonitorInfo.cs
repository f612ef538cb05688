using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>A monitor (or a projector: to the system it is one) as the system describes it now.</summary>
/// <param name="Number">Counts the monitors from 1, the primary one first.</param>
/// <param name="Name">The system's name for it.</param>
/// <param name="X">Where its left edge lies on the desktop.</param>
/// <param name="Y">Where its upper edge lies on the desktop.</param>
/// <param name="Mode">The size of its picture.</param>
/// <param name="RefreshHertz">Pictures a second; 0 when the system does not say.</param>
/// <param name="WidthMillimetres">The width it says it has; 0 when it does not say, and for a projector without meaning.</param>
/// <param name="HeightMillimetres">Its height likewise.</param>
public sealed record MonitorInfo(int Number, string Name, int X, int Y, PictureSize Mode, int RefreshHertz, int WidthMillimetres, int HeightMillimetres);
