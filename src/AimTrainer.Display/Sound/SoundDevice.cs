namespace AimTrainer.Display;

/// <summary>A place where sound can go.</summary>
/// <param name="Name">What to give to open it.</param>
/// <param name="Description">What the system says of it, on one line.</param>
public sealed record SoundDevice(string Name, string Description);
