using System.Text;

namespace AimTrainer.Display;

/// <summary>A device of ALSA, opened for <see cref="SoundFormat.Shorts"/>.</summary>
internal sealed unsafe class AlsaPcm : IPcm
{
    private const int Playback = 0;
    private const int NonBlocking = 1;
    private const int Signed16LittleEndian = 2;
    private const int ReadWriteInterleaved = 3;

    private readonly AlsaLibrary _library;
    private nint _handle;

    private AlsaPcm(AlsaLibrary library, string device, nint handle) => (_library, Device, _handle) = (library, device, handle);

    public string Device { get; }

    /// <param name="library">ALSA.</param>
    /// <param name="device">Its name, as ALSA knows it.</param>
    /// <param name="error">0, or why it is not open.</param>
    /// <returns>The device, or null.</returns>
    public static AlsaPcm? TryOpen(AlsaLibrary library, string device, out int error)
    {
        nint handle = 0;
        fixed (byte* name = Encoding.UTF8.GetBytes(device + '\0'))
        {
            // A device that is in use would otherwise keep us waiting until it is free.
            error = library.Open(&handle, name, Playback, NonBlocking);
        }

        if (error < 0)
        {
            return null;
        }

        var pcm = new AlsaPcm(library, device, handle);
        error = library.SetNonBlocking(handle, 0);
        if (error >= 0)
        {
            error = library.SetParameters(
                handle, Signed16LittleEndian, ReadWriteInterleaved, SoundFormat.Channels, SoundFormat.Rate, 1, (uint)SoundFormat.Buffer.TotalMicroseconds);
        }

        if (error >= 0)
        {
            return pcm;
        }

        pcm.Dispose();
        return null;
    }

    public int Write(ReadOnlySpan<byte> frames)
    {
        fixed (byte* bytes = frames)
        {
            return (int)_library.WriteInterleaved(_handle, bytes, (nuint)(frames.Length / SoundFormat.Shorts.BlockAlign));
        }
    }

    public int Recover(int error) => _library.Recover(_handle, error, 1);

    public void Drain() => _ = _library.Drain(_handle);

    public void Dispose()
    {
        var handle = Interlocked.Exchange(ref _handle, 0);
        if (handle != 0)
        {
            _ = _library.Close(handle);
        }
    }
}
