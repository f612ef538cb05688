using System.Runtime.InteropServices;
using System.Text;

namespace AimTrainer.Display;

/// <summary>
/// The functions of libEGL that an offscreen context needs. Every number is from the registry of EGL. Source: Khronos EGL 1.5 and the
/// extensions EGL_EXT_platform_device, EGL_EXT_device_enumeration, EGL_MESA_platform_surfaceless, EGL_MESA_device_software.
/// </summary>
internal sealed unsafe class EglLibrary : IEgl
{
    public const int PlatformSurfaceless = 0x31DD;
    public const int PlatformDevice = 0x313F;

    private const int Extensions = 0x3055;
    private const int Vendor = 0x3053;
    private const int OpenGlApi = 0x30A2;
    private const int RenderableType = 0x3040;
    private const int OpenGlBit = 0x8;
    private const int SurfaceType = 0x3033;
    private const int PbufferBit = 0x1;
    private const int None = 0x3038;
    private const int MajorVersion = 0x3098;
    private const int MinorVersion = 0x30FB;
    private const int ProfileMask = 0x30FD;
    private const int CoreProfile = 0x1;
    private const int Width = 0x3057;
    private const int Height = 0x3056;
    private const int NotAllowed = 0x3002;

    private static readonly string[] _names = ["libEGL.so.1", "libEGL.so"];

    private readonly nint _handle;
    private readonly delegate* unmanaged<byte*, nint> _getProcAddress;
    private readonly delegate* unmanaged<nint, int, byte*> _queryString;
    private readonly delegate* unmanaged<nint, int*, int*, uint> _initialize;
    private readonly delegate* unmanaged<int, uint> _bindApi;
    private readonly delegate* unmanaged<nint, int*, nint*, int, int*, uint> _chooseConfig;
    private readonly delegate* unmanaged<nint, nint, nint, int*, nint> _createContext;
    private readonly delegate* unmanaged<nint, nint, int*, nint> _createPbuffer;
    private readonly delegate* unmanaged<nint, nint, nint, nint, uint> _makeCurrent;
    private readonly delegate* unmanaged<nint, nint, uint> _destroyContext;
    private readonly delegate* unmanaged<nint, nint, uint> _destroySurface;
    private readonly delegate* unmanaged<int> _getError;
    private readonly delegate* unmanaged<int, nint, int*, nint> _getPlatformDisplay;
    private readonly delegate* unmanaged<int, nint*, int*, uint> _queryDevices;
    private readonly delegate* unmanaged<nint, int, byte*> _queryDeviceString;

    private EglLibrary(nint handle)
    {
        _handle = handle;
        nint Export(string name) => NativeLibrary.GetExport(handle, name);
        _getProcAddress = (delegate* unmanaged<byte*, nint>)Export("eglGetProcAddress");
        _queryString = (delegate* unmanaged<nint, int, byte*>)Export("eglQueryString");
        _initialize = (delegate* unmanaged<nint, int*, int*, uint>)Export("eglInitialize");
        _bindApi = (delegate* unmanaged<int, uint>)Export("eglBindAPI");
        _chooseConfig = (delegate* unmanaged<nint, int*, nint*, int, int*, uint>)Export("eglChooseConfig");
        _createContext = (delegate* unmanaged<nint, nint, nint, int*, nint>)Export("eglCreateContext");
        _createPbuffer = (delegate* unmanaged<nint, nint, int*, nint>)Export("eglCreatePbufferSurface");
        _makeCurrent = (delegate* unmanaged<nint, nint, nint, nint, uint>)Export("eglMakeCurrent");
        _destroyContext = (delegate* unmanaged<nint, nint, uint>)Export("eglDestroyContext");
        _destroySurface = (delegate* unmanaged<nint, nint, uint>)Export("eglDestroySurface");
        _getError = (delegate* unmanaged<int>)Export("eglGetError");
        _getPlatformDisplay = (delegate* unmanaged<int, nint, int*, nint>)FunctionOf("eglGetPlatformDisplayEXT");
        _queryDevices = (delegate* unmanaged<int, nint*, int*, uint>)FunctionOf("eglQueryDevicesEXT");
        _queryDeviceString = (delegate* unmanaged<nint, int, byte*>)FunctionOf("eglQueryDeviceStringEXT");
    }

    /// <summary>Loads it, or says nothing (null) when this machine has none.</summary>
    /// <param name="load">Finds a library by its name: its handle, or 0.</param>
    public static EglLibrary? Load(Func<string, nint> load)
    {
        foreach (var name in _names)
        {
            if (load(name) is not 0 and var handle)
            {
                try
                {
                    return new EglLibrary(handle);
                }
                catch (EntryPointNotFoundException)
                {
                    // A library of that name that is not EGL: as good as none.
                }
            }
        }

        return null;
    }

    /// <inheritdoc/>
    public nint FunctionOf(string name)
    {
        Span<byte> bytes = stackalloc byte[128];
        var written = Encoding.ASCII.GetBytes(name, bytes[..^1]);
        bytes[written] = 0;
        fixed (byte* text = bytes)
        {
            var address = _getProcAddress(text);
            return address != 0 || !NativeLibrary.TryGetExport(_handle, name, out var export) ? address : export;
        }
    }

    /// <summary>
    /// The ways to a display that need no X and no Wayland, the best first: graphics cards, then Mesa without a surface, then what draws on
    /// the processor. A card comes first, because on a machine that has both, Mesa's surfaceless display draws on the processor.
    /// </summary>
    public IReadOnlyList<EglPlace> Places()
    {
        var client = TextOf(_queryString(0, Extensions));
        var (cards, software) = (new List<EglPlace>(), new List<EglPlace>());
        if (_getPlatformDisplay == null)
        {
            return [];
        }

        if (Has(client, "EGL_EXT_platform_device") && _queryDevices != null && _queryDeviceString != null)
        {
            const int Most = 64;
            var devices = stackalloc nint[Most];
            int found;
            if (_queryDevices(Most, devices, &found) != 0)
            {
                for (var i = 0; i < found; i++)
                {
                    var isSoftware = Has(TextOf(_queryDeviceString(devices[i], Extensions)), "EGL_MESA_device_software");
                    (isSoftware ? software : cards).Add(new EglPlace(PlatformDevice, devices[i], isSoftware));
                }
            }
        }

        if (Has(client, "EGL_MESA_platform_surfaceless"))
        {
            cards.Add(new EglPlace(PlatformSurfaceless, 0, IsSoftware: false));
        }

        return [.. cards, .. software];
    }

    /// <inheritdoc/>
    public nint Open(EglPlace place)
    {
        var display = _getPlatformDisplay(place.Platform, place.Device, null);
        int major, minor;
        return display != 0 && _initialize(display, &major, &minor) != 0 ? display : 0;
    }

    /// <inheritdoc/>
    public string VendorOf(nint display) => TextOf(_queryString(display, Vendor));

    /// <inheritdoc/>
    public nint ConfigOf(nint display)
    {
        if (_bindApi(OpenGlApi) == 0)
        {
            return 0;
        }

        var wanted = stackalloc int[] { RenderableType, OpenGlBit, SurfaceType, PbufferBit, None };
        nint config;
        int found;
        return _chooseConfig(display, wanted, &config, 1, &found) != 0 && found > 0 ? config : 0;
    }

    /// <inheritdoc/>
    public nint ContextOf(nint display, nint config)
    {
        var wanted = stackalloc int[] { MajorVersion, 3, MinorVersion, 3, ProfileMask, CoreProfile, None };
        return _createContext(display, config, 0, wanted);
    }

    /// <inheritdoc/>
    public nint TinySurfaceOf(nint display, nint config)
    {
        var wanted = stackalloc int[] { Width, 1, Height, 1, None };
        return _createPbuffer(display, config, wanted);
    }

    /// <inheritdoc/>
    public bool MakeCurrent(nint display, nint surface, nint context) => _makeCurrent(display, surface, surface, context) != 0;

    /// <inheritdoc/>
    public void Release(nint display, nint surface, nint context)
    {
        _makeCurrent(display, 0, 0, 0);
        _destroyContext(display, context);
        if (surface != 0)
        {
            _destroySurface(display, surface);
        }
    }

    /// <inheritdoc/>
    public string LastError() => _getError() switch
    {
        NotAllowed => "access denied",
        var code => FormattableString.Invariant($"EGL error 0x{code:X}"),
    };

    private static bool Has(string extensions, string name) => extensions.Split(' ').Contains(name);

    private static string TextOf(byte* text) => text == null ? "" : Marshal.PtrToStringUTF8((nint)text) ?? "";
}
