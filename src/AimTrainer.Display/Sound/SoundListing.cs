using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>The sound devices of this machine.</summary>
/// <param name="Devices">Those found; empty when there are none.</param>
/// <param name="Problem">Why nothing could be found out, and what to do; null when it could.</param>
public sealed record SoundListing(ValueList<SoundDevice> Devices, string? Problem);
