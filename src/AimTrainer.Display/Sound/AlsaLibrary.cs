using System.Diagnostics.CodeAnalysis;
using System.Runtime.InteropServices;

namespace AimTrainer.Display;

/// <summary>The functions of libasound that are used here. Loaded by name at run time, so that the program starts without it.</summary>
internal sealed unsafe class AlsaLibrary
{
    public readonly delegate* unmanaged<nint*, byte*, int, int, int> Open;
    public readonly delegate* unmanaged<nint, int, int> SetNonBlocking;
    public readonly delegate* unmanaged<nint, int, int, uint, uint, int, uint, int> SetParameters;
    public readonly delegate* unmanaged<nint, byte*, nuint, nint> WriteInterleaved;
    public readonly delegate* unmanaged<nint, int, int, int> Recover;
    public readonly delegate* unmanaged<nint, int> Drain;
    public readonly delegate* unmanaged<nint, int> Close;
    public readonly delegate* unmanaged<int, byte*, nint**, int> Hints;
    public readonly delegate* unmanaged<nint, byte*, byte*> Hint;
    public readonly delegate* unmanaged<nint*, int> FreeHints;
    private readonly delegate* unmanaged<int, byte*> _errorText;

    private AlsaLibrary(nint library)
    {
        Open = (delegate* unmanaged<nint*, byte*, int, int, int>)Export(library, "snd_pcm_open");
        SetNonBlocking = (delegate* unmanaged<nint, int, int>)Export(library, "snd_pcm_nonblock");
        SetParameters = (delegate* unmanaged<nint, int, int, uint, uint, int, uint, int>)Export(library, "snd_pcm_set_params");
        WriteInterleaved = (delegate* unmanaged<nint, byte*, nuint, nint>)Export(library, "snd_pcm_writei");
        Recover = (delegate* unmanaged<nint, int, int, int>)Export(library, "snd_pcm_recover");
        Drain = (delegate* unmanaged<nint, int>)Export(library, "snd_pcm_drain");
        Close = (delegate* unmanaged<nint, int>)Export(library, "snd_pcm_close");
        Hints = (delegate* unmanaged<int, byte*, nint**, int>)Export(library, "snd_device_name_hint");
        Hint = (delegate* unmanaged<nint, byte*, byte*>)Export(library, "snd_device_name_get_hint");
        FreeHints = (delegate* unmanaged<nint*, int>)Export(library, "snd_device_name_free_hint");
        _errorText = (delegate* unmanaged<int, byte*>)Export(library, "snd_strerror");

        // Otherwise the library writes lines of its own to the terminal; what matters comes back as a number.
        var setHandler = (delegate* unmanaged<delegate* unmanaged<byte*, int, byte*, int, byte*, void>, int>)Export(library, "snd_lib_error_set_handler");
        setHandler(&Ignore);
    }

    /// <returns>The library, or null when it is not on this machine.</returns>
    public static AlsaLibrary? Load(string name)
    {
        // Never unloaded: the library keeps a pointer to our handler.
        try
        {
            return NativeLibrary.TryLoad(name, out var library) ? new AlsaLibrary(library) : null;
        }
        catch (EntryPointNotFoundException)
        {
            return null;
        }
    }

    /// <summary>What the library says of an error number.</summary>
    public string ErrorText(int error) => Marshal.PtrToStringUTF8((nint)_errorText(error)) ?? $"error {-error}";

    private static void* Export(nint library, string name) => (void*)NativeLibrary.GetExport(library, name);

    // The library passes more arguments after these, for its format; a caller cleans up after itself, so they need no name.
    [UnmanagedCallersOnly]
    [SuppressMessage("Style", "IDE0060:Remove unused parameter", Justification = "The library decides what it passes.")]
    private static void Ignore(byte* file, int line, byte* function, int error, byte* format)
    {
    }
}
