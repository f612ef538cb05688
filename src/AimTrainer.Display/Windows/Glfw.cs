using System.Runtime.InteropServices;
using System.Text;

namespace AimTrainer.Display;

/// <summary>
/// The functions of GLFW that this program uses, and nothing more. Its functions want the process's first thread (macOS insists);
/// only <see cref="PostEmptyEvent"/> may be called from any.
/// </summary>
internal sealed unsafe class Glfw
{
    private readonly delegate* unmanaged[Cdecl]<int> _init;
    private readonly delegate* unmanaged[Cdecl]<void> _terminate;
    private readonly delegate* unmanaged[Cdecl]<byte**, int> _getError;
    private readonly delegate* unmanaged[Cdecl]<int*, nint*> _getMonitors;
    private readonly delegate* unmanaged[Cdecl]<nint, byte*> _getMonitorName;
    private readonly delegate* unmanaged[Cdecl]<nint, int*, int*, void> _getMonitorPos;
    private readonly delegate* unmanaged[Cdecl]<nint, int*, int*, void> _getMonitorPhysicalSize;
    private readonly delegate* unmanaged[Cdecl]<nint, GlfwVideoMode*> _getVideoMode;
    private readonly delegate* unmanaged[Cdecl]<void> _defaultWindowHints;
    private readonly delegate* unmanaged[Cdecl]<int, int, void> _windowHint;
    private readonly delegate* unmanaged[Cdecl]<int, int, byte*, nint, nint, nint> _createWindow;
    private readonly delegate* unmanaged[Cdecl]<nint, void> _destroyWindow;
    private readonly delegate* unmanaged[Cdecl]<nint, int> _windowShouldClose;
    private readonly delegate* unmanaged[Cdecl]<nint, byte*, void> _setWindowTitle;
    private readonly delegate* unmanaged[Cdecl]<nint, int, int, void> _setWindowPos;
    private readonly delegate* unmanaged[Cdecl]<nint, int, int, void> _setWindowSize;
    private readonly delegate* unmanaged[Cdecl]<nint, int*, int*, void> _getFramebufferSize;
    private readonly delegate* unmanaged[Cdecl]<nint, int, int, void> _setWindowAttrib;
    private readonly delegate* unmanaged[Cdecl]<nint, void> _showWindow;
    private readonly delegate* unmanaged[Cdecl]<nint, int, int, void> _setInputMode;
    private readonly delegate* unmanaged[Cdecl]<nint, nint, nint> _setKeyCallback;
    private readonly delegate* unmanaged[Cdecl]<nint, nint, nint> _setWindowRefreshCallback;
    private readonly delegate* unmanaged[Cdecl]<nint, void> _makeContextCurrent;
    private readonly delegate* unmanaged[Cdecl]<byte*, nint> _getProcAddress;
    private readonly delegate* unmanaged[Cdecl]<int, void> _swapInterval;
    private readonly delegate* unmanaged[Cdecl]<nint, void> _swapBuffers;
    private readonly delegate* unmanaged[Cdecl]<double, void> _waitEventsTimeout;
    private readonly delegate* unmanaged[Cdecl]<void> _postEmptyEvent;

    /// <exception cref="EntryPointNotFoundException">The library is older than 3.3.</exception>
    public Glfw(nint library)
    {
        nint Export(string name) => NativeLibrary.GetExport(library, name);
        _init = (delegate* unmanaged[Cdecl]<int>)Export("glfwInit");
        _terminate = (delegate* unmanaged[Cdecl]<void>)Export("glfwTerminate");
        _getError = (delegate* unmanaged[Cdecl]<byte**, int>)Export("glfwGetError");
        _getMonitors = (delegate* unmanaged[Cdecl]<int*, nint*>)Export("glfwGetMonitors");
        _getMonitorName = (delegate* unmanaged[Cdecl]<nint, byte*>)Export("glfwGetMonitorName");
        _getMonitorPos = (delegate* unmanaged[Cdecl]<nint, int*, int*, void>)Export("glfwGetMonitorPos");
        _getMonitorPhysicalSize = (delegate* unmanaged[Cdecl]<nint, int*, int*, void>)Export("glfwGetMonitorPhysicalSize");
        _getVideoMode = (delegate* unmanaged[Cdecl]<nint, GlfwVideoMode*>)Export("glfwGetVideoMode");
        _defaultWindowHints = (delegate* unmanaged[Cdecl]<void>)Export("glfwDefaultWindowHints");
        _windowHint = (delegate* unmanaged[Cdecl]<int, int, void>)Export("glfwWindowHint");
        _createWindow = (delegate* unmanaged[Cdecl]<int, int, byte*, nint, nint, nint>)Export("glfwCreateWindow");
        _destroyWindow = (delegate* unmanaged[Cdecl]<nint, void>)Export("glfwDestroyWindow");
        _windowShouldClose = (delegate* unmanaged[Cdecl]<nint, int>)Export("glfwWindowShouldClose");
        _setWindowTitle = (delegate* unmanaged[Cdecl]<nint, byte*, void>)Export("glfwSetWindowTitle");
        _setWindowPos = (delegate* unmanaged[Cdecl]<nint, int, int, void>)Export("glfwSetWindowPos");
        _setWindowSize = (delegate* unmanaged[Cdecl]<nint, int, int, void>)Export("glfwSetWindowSize");
        _getFramebufferSize = (delegate* unmanaged[Cdecl]<nint, int*, int*, void>)Export("glfwGetFramebufferSize");
        _setWindowAttrib = (delegate* unmanaged[Cdecl]<nint, int, int, void>)Export("glfwSetWindowAttrib");
        _showWindow = (delegate* unmanaged[Cdecl]<nint, void>)Export("glfwShowWindow");
        _setInputMode = (delegate* unmanaged[Cdecl]<nint, int, int, void>)Export("glfwSetInputMode");
        _setKeyCallback = (delegate* unmanaged[Cdecl]<nint, nint, nint>)Export("glfwSetKeyCallback");
        _setWindowRefreshCallback = (delegate* unmanaged[Cdecl]<nint, nint, nint>)Export("glfwSetWindowRefreshCallback");
        _makeContextCurrent = (delegate* unmanaged[Cdecl]<nint, void>)Export("glfwMakeContextCurrent");
        _getProcAddress = (delegate* unmanaged[Cdecl]<byte*, nint>)Export("glfwGetProcAddress");
        _swapInterval = (delegate* unmanaged[Cdecl]<int, void>)Export("glfwSwapInterval");
        _swapBuffers = (delegate* unmanaged[Cdecl]<nint, void>)Export("glfwSwapBuffers");
        _waitEventsTimeout = (delegate* unmanaged[Cdecl]<double, void>)Export("glfwWaitEventsTimeout");
        _postEmptyEvent = (delegate* unmanaged[Cdecl]<void>)Export("glfwPostEmptyEvent");
    }

    public bool Init() => _init() == GlfwNames.True;

    public void Terminate() => _terminate();

    /// <summary>The last error of this thread, which is then forgotten: its number and GLFW's own words.</summary>
    public (int Code, string Words) TakeError()
    {
        byte* words = null;
        var code = _getError(&words);
        return (code, words is null ? "" : Marshal.PtrToStringUTF8((nint)words) ?? "");
    }

    /// <summary>The monitors now. Valid until events are next processed.</summary>
    public ReadOnlySpan<nint> Monitors()
    {
        int count;
        var first = _getMonitors(&count);
        return first is null ? [] : new ReadOnlySpan<nint>(first, count);
    }

    public string MonitorName(nint monitor) => Marshal.PtrToStringUTF8((nint)_getMonitorName(monitor)) ?? "";

    public (int X, int Y) MonitorPosition(nint monitor)
    {
        int x, y;
        _getMonitorPos(monitor, &x, &y);
        return (x, y);
    }

    public (int Width, int Height) MonitorMillimetres(nint monitor)
    {
        int width, height;
        _getMonitorPhysicalSize(monitor, &width, &height);
        return (width, height);
    }

    public GlfwVideoMode MonitorMode(nint monitor)
    {
        var mode = _getVideoMode(monitor);
        return mode is null ? default : *mode;
    }

    public void DefaultHints() => _defaultWindowHints();

    public void Hint(int hint, int value) => _windowHint(hint, value);

    /// <summary>0 when it cannot be had; see <see cref="TakeError"/>.</summary>
    public nint CreateWindow(int width, int height, string title)
    {
        fixed (byte* text = Utf8(title))
        {
            return _createWindow(width, height, text, 0, 0);
        }
    }

    public void DestroyWindow(nint window) => _destroyWindow(window);

    public bool ShouldClose(nint window) => _windowShouldClose(window) != GlfwNames.False;

    public void SetTitle(nint window, string title)
    {
        fixed (byte* text = Utf8(title))
        {
            _setWindowTitle(window, text);
        }
    }

    public void SetPosition(nint window, int x, int y) => _setWindowPos(window, x, y);

    public void SetSize(nint window, int width, int height) => _setWindowSize(window, width, height);

    public (int Width, int Height) FramebufferSize(nint window)
    {
        int width, height;
        _getFramebufferSize(window, &width, &height);
        return (width, height);
    }

    public void SetAttribute(nint window, int attribute, int value) => _setWindowAttrib(window, attribute, value);

    public void Show(nint window) => _showWindow(window);

    public void SetInputMode(nint window, int mode, int value) => _setInputMode(window, mode, value);

    public void SetKeyCallback(nint window, nint callback) => _setKeyCallback(window, callback);

    public void SetRefreshCallback(nint window, nint callback) => _setWindowRefreshCallback(window, callback);

    public void MakeCurrent(nint window) => _makeContextCurrent(window);

    public nint ProcAddress(string name)
    {
        fixed (byte* text = Utf8(name))
        {
            return _getProcAddress(text);
        }
    }

    public void SwapInterval(int refreshes) => _swapInterval(refreshes);

    public void SwapBuffers(nint window) => _swapBuffers(window);

    /// <summary>Sleeps until something happens, somebody calls <see cref="PostEmptyEvent"/>, or so many seconds have passed.</summary>
    public void WaitEvents(double seconds) => _waitEventsTimeout(seconds);

    public void PostEmptyEvent() => _postEmptyEvent();

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text + '\0');
}
