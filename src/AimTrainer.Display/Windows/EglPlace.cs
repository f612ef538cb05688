namespace AimTrainer.Display;

/// <summary>One way to a display without X.</summary>
/// <param name="Platform">The EGL platform.</param>
/// <param name="Device">The graphics card on it, or 0.</param>
/// <param name="IsSoftware">Whether it is known to draw on the processor.</param>
internal readonly record struct EglPlace(int Platform, nint Device, bool IsSoftware);
