using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>The sound of one operating system.</summary>
public interface ISoundSystem
{
    /// <summary>The devices that can be opened.</summary>
    SoundListing List();

    /// <summary>Opens a device for an endless stream.</summary>
    /// <param name="device">Its name, or null for the usual one.</param>
    /// <param name="samples">What is played.</param>
    /// <returns>A player, or what was found and what to do.</returns>
    SoundOpening Open(string? device, ISampleProvider samples);
}
