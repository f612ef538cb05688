using System.Runtime.InteropServices;
using AimTrainer.Domain;
using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>Sound on Linux, through ALSA (which also leads to a sound server, where there is one).</summary>
/// <param name="libraryName">The file name of the library.</param>
/// <param name="clock">Gives devices without a pace of their own one.</param>
public sealed class AlsaSound(string libraryName, TimeProvider clock) : ISoundSystem
{
    /// <summary>The library as every distribution names it.</summary>
    public const string LibraryName = "libasound.so.2";

    private string Missing => $"{libraryName} is not on this machine: install ALSA's library (Debian: apt install libasound2)";

    /// <inheritdoc/>
    public unsafe SoundListing List()
    {
        if (AlsaLibrary.Load(libraryName) is not { } library)
        {
            return new SoundListing([], Missing);
        }

        nint* hints;
        fixed (byte* kind = "pcm"u8)
        {
            if (library.Hints(-1, kind, &hints) < 0)
            {
                return new SoundListing([], null);
            }
        }

        var devices = new List<SoundDevice>();
        for (var hint = hints; *hint != 0; hint++)
        {
            // A device that only records says "Input"; one for both says nothing.
            if (Text(library, *hint, "NAME"u8) is { } name && Text(library, *hint, "IOID"u8) != "Input")
            {
                devices.Add(new SoundDevice(name, (Text(library, *hint, "DESC"u8) ?? "").ReplaceLineEndings(", ")));
            }
        }

        _ = library.FreeHints(hints);
        return new SoundListing(devices.ToValueList(), null);
    }

    /// <inheritdoc/>
    public SoundOpening Open(string? device, ISampleProvider samples)
    {
        if (AlsaLibrary.Load(libraryName) is not { } library)
        {
            return SoundOpening.Failed(Missing);
        }

        var name = device ?? SoundDevices.Usual;
        if (AlsaPcm.TryOpen(library, name, out var error) is not { } pcm)
        {
            return SoundOpening.Failed(AlsaProblem.OfOpening(name, error, library.ErrorText(error)));
        }

        var player = new AlsaPlayer(pcm, clock);
        player.Init(samples.ToWaveProvider16());
        return SoundOpening.Of(player);
    }

    private static unsafe string? Text(AlsaLibrary library, nint hint, ReadOnlySpan<byte> key)
    {
        // Literals in UTF-8 end with a zero beyond their length.
        fixed (byte* named = key)
        {
            var text = library.Hint(hint, named);
            try
            {
                return Marshal.PtrToStringUTF8((nint)text);
            }
            finally
            {
                NativeMemory.Free(text);
            }
        }
    }
}
