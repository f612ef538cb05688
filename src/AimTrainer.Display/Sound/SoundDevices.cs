using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>Opens what a user may name as a sound device: the usual one, one of the system's, or a file.</summary>
/// <param name="system">The sound of the operating system.</param>
/// <param name="clock">Gives a file its pace.</param>
public sealed class SoundDevices(ISoundSystem system, TimeProvider clock)
{
    /// <summary>The name of the usual device.</summary>
    public const string Usual = "default";

    /// <summary>Before the name of a file that takes what would be heard.</summary>
    public const string FilePrefix = "wav:";

    /// <summary>Those of this machine.</summary>
    public static SoundDevices OfThisMachine(TimeProvider clock) => new(
        OperatingSystem.IsWindows() ? new WasapiSound() : OperatingSystem.IsLinux() ? new AlsaSound(AlsaSound.LibraryName, clock) : new NoSound(), clock);

    /// <summary>The system's devices; the usual one and files are not among them.</summary>
    public SoundListing List() => system.List();

    /// <summary>Opens a device; it is silent until it is told to play.</summary>
    /// <param name="device">A name.</param>
    /// <param name="samples">What is played.</param>
    /// <returns>A player, or what was found and what to do.</returns>
    public SoundOpening Open(string device, ISampleProvider samples) =>
        device.StartsWith(FilePrefix, StringComparison.OrdinalIgnoreCase) ? OpenFile(device[FilePrefix.Length..], samples)
        : system.Open(string.Equals(device, Usual, StringComparison.OrdinalIgnoreCase) ? null : device, samples);

    private SoundOpening OpenFile(string path, ISampleProvider samples)
    {
        try
        {
            var player = new PacedPlayer(clock, new WaveFileWriter(path, SoundFormat.Shorts));
            player.Init(samples.ToWaveProvider16());
            return SoundOpening.Of(player);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return SoundOpening.Failed($"{path}: the sound cannot be written there ({exception.Message.TrimEnd('.', ' ')}): name another file");
        }
    }
}
