using System.Runtime.InteropServices;

namespace AimTrainer.Display;

/// <summary>
/// Learns that the X server is gone. Xlib then ends the whole process, unless it is given something else to do: a session must not end
/// because its desktop does. From that moment on no function of GLFW or GL may be called. Elsewhere than on X11 it never happens.
/// </summary>
internal sealed unsafe class LostDisplay
{
    // Xlib calls both for as long as its display is open: first the one that reports, then the one that would end the process. The
    // reporter that Xlib brings along ends it too (seen with libX11 1.8.4), so both have to be ours.
    private readonly ReportHandler _report;
    private readonly ExitHandler _exit;
    private volatile bool _isLost;

    private LostDisplay() => (_report, _exit) = (_ => 0, (_, _) => _isLost = true);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate int ReportHandler(nint display);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate void ExitHandler(nint display, nint data);

    /// <summary>Whether it is gone.</summary>
    public bool IsLost => _isLost;

    /// <summary>Begins to listen. A libX11 that knows no such listener (before 1.7) is left as it is.</summary>
    /// <param name="glfw">The library, after its start.</param>
    public static LostDisplay Listen(nint glfw)
    {
        var lost = new LostDisplay();
        if (OperatingSystem.IsLinux() && NativeLibrary.TryGetExport(glfw, "glfwGetX11Display", out var getDisplay)
            && NativeLibrary.TryLoad("libX11.so.6", out var xlib) && NativeLibrary.TryGetExport(xlib, "XSetIOErrorExitHandler", out var setExit)
            && NativeLibrary.TryGetExport(xlib, "XSetIOErrorHandler", out var setReport)
            && ((delegate* unmanaged[Cdecl]<nint>)getDisplay)() is not 0 and var display)
        {
            ((delegate* unmanaged[Cdecl]<nint, nint, nint, void>)setExit)(display, Marshal.GetFunctionPointerForDelegate(lost._exit), 0);
            ((delegate* unmanaged[Cdecl]<nint, nint>)setReport)(Marshal.GetFunctionPointerForDelegate(lost._report));
        }

        return lost;
    }
}
