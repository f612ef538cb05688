using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>An operating system whose sound this program cannot reach: it says so, and stays silent.</summary>
public sealed class NoSound : ISoundSystem
{
    /// <summary>What is said.</summary>
    public const string Why = "no sound on this system yet (Linux with ALSA and Windows have it): --sound wav:FILE writes the cues to a file";

    /// <inheritdoc/>
    public SoundListing List() => new([], Why);

    /// <inheritdoc/>
    public SoundOpening Open(string? device, ISampleProvider samples) => SoundOpening.Failed(Why);
}
