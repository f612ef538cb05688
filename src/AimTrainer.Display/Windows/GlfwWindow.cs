using System.Runtime.InteropServices;
using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>A window with an OpenGL 3.3 core context: double buffered, in step with the monitor. All of it on the window system's thread.</summary>
public sealed class GlfwWindow : IGlSurface
{
    private readonly Glfw _glfw;
    private readonly nint _window;

    // GLFW calls these for as long as the window lives: they must not be collected before.
    private readonly KeyCallback _onKey;
    private readonly RefreshCallback _onRefresh;
    private readonly List<KeyPress> _presses = [];
    private bool _isDamaged;

    private GlfwWindow(Glfw glfw, nint window, WindowWish wish, WindowPlace place)
    {
        (_glfw, _window, Wish) = (glfw, window, wish);
        _onKey = OnKey;
        _onRefresh = _ => _isDamaged = true;
        glfw.SetKeyCallback(window, Marshal.GetFunctionPointerForDelegate(_onKey));
        glfw.SetRefreshCallback(window, Marshal.GetFunctionPointerForDelegate(_onRefresh));
        if (wish.HidesPointer)
        {
            glfw.SetInputMode(window, GlfwNames.Cursor, GlfwNames.CursorHidden);
        }

        Place = place;
        Put(place);
        glfw.Show(window);
        MakeCurrent();

        // The loop draws when there is news, so one refresh is the longest a swap can wait for.
        glfw.SwapInterval(1);
        Gl = GL.GetApi(glfw.ProcAddress);
    }

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate void KeyCallback(nint window, int key, int scanCode, int action, int modifiers);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate void RefreshCallback(nint window);

    /// <summary>How it was asked for.</summary>
    public WindowWish Wish { get; }

    /// <summary>Where it is.</summary>
    public WindowPlace Place { get; private set; }

    /// <inheritdoc/>
    public GL Gl { get; }

    /// <inheritdoc/>
    /// <remarks>At least 1x1, also while the window is shrunk to nothing (<see cref="HasPicture"/>).</remarks>
    public PictureSize Size
    {
        get
        {
            var (width, height) = _glfw.FramebufferSize(_window);
            return new PictureSize(Math.Max(1, width), Math.Max(1, height));
        }
    }

    /// <summary>Whether there is anything of it to draw into: not while it is minimised.</summary>
    public bool HasPicture => _glfw.FramebufferSize(_window) is { Width: > 0, Height: > 0 };

    /// <summary>Whether the user asked to close it.</summary>
    public bool CloseIsAsked => _glfw.ShouldClose(_window);

    /// <summary>Opens a window at the place that the monitors there are allow.</summary>
    /// <returns>The window with its context current, or why there is none and what to do, in one line.</returns>
    public static (GlfwWindow? Window, string? Problem) Open(WindowSystem system, WindowWish wish)
    {
        var glfw = system.Glfw;
        var place = WindowPlace.For(wish, system.Monitors.All);
        glfw.DefaultHints();
        glfw.Hint(GlfwNames.ContextVersionMajor, 3);
        glfw.Hint(GlfwNames.ContextVersionMinor, 3);
        glfw.Hint(GlfwNames.OpenGlProfile, GlfwNames.OpenGlCoreProfile);

        // macOS gives a core context to nobody who does not ask for this.
        glfw.Hint(GlfwNames.OpenGlForwardCompatible, GlfwNames.True);
        glfw.Hint(GlfwNames.DepthBits, 0);
        glfw.Hint(GlfwNames.StencilBits, 0);
        glfw.Hint(GlfwNames.SrgbCapable, GlfwNames.True);
        glfw.Hint(GlfwNames.DoubleBuffer, GlfwNames.True);
        glfw.Hint(GlfwNames.Visible, GlfwNames.False);
        glfw.Hint(GlfwNames.Decorated, place.Borderless ? GlfwNames.False : GlfwNames.True);
        glfw.Hint(GlfwNames.Floating, place.Borderless ? GlfwNames.True : GlfwNames.False);

        // The coach types in another window: a picture must not take the keys away.
        glfw.Hint(GlfwNames.Focused, GlfwNames.False);
        glfw.Hint(GlfwNames.FocusOnShow, GlfwNames.False);
        var window = glfw.CreateWindow(place.Size.Width, place.Size.Height, wish.Title);
        if (window != 0)
        {
            return (new GlfwWindow(glfw, window, wish, place), null);
        }

        var (code, words) = glfw.TakeError();
        return (null, code is GlfwNames.ApiUnavailable or GlfwNames.VersionUnavailable or GlfwNames.FormatUnavailable
            ? $"no window: OpenGL 3.3 could not be started here ({words}); {GlfwLibrary.HowToGetOpenGl}"
            : $"no window: the system did not open one ({words})");
    }

    /// <summary>Makes its context the one that GL calls go to.</summary>
    public void MakeCurrent() => _glfw.MakeCurrent(_window);

    /// <summary>Shows what was drawn.</summary>
    public void Submit() => _glfw.SwapBuffers(_window);

    /// <summary>Whether the system lost a part of its picture since this was last asked.</summary>
    public bool TakeDamage()
    {
        var damaged = _isDamaged;
        _isDamaged = false;
        return damaged;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Gl.Dispose();
        _glfw.DestroyWindow(_window);
    }

    /// <summary>The keys since they were last forgotten.</summary>
    internal ReadOnlySpan<KeyPress> Presses => CollectionsMarshal.AsSpan(_presses);

    internal void ForgetPresses() => _presses.Clear();

    /// <summary>Moves it to where the monitors there are allow.</summary>
    /// <returns>Whether that is another place than before.</returns>
    internal bool PlaceAgain(MonitorList monitors)
    {
        var place = WindowPlace.For(Wish, monitors.All);

        // An ordinary window that its user has moved stays where it is, unless it has just become one.
        if (place == Place || (!place.Borderless && !Place.Borderless && place.Missing == Place.Missing))
        {
            return false;
        }

        Place = place;
        Put(place);
        return true;
    }

    private void Put(WindowPlace place)
    {
        _glfw.SetAttribute(_window, GlfwNames.Decorated, place.Borderless ? GlfwNames.False : GlfwNames.True);
        _glfw.SetAttribute(_window, GlfwNames.Floating, place.Borderless ? GlfwNames.True : GlfwNames.False);
        _glfw.SetSize(_window, place.Size.Width, place.Size.Height);
        _glfw.SetPosition(_window, place.X, place.Y);
        _glfw.SetTitle(_window, place.Missing is { } missing ? $"{Wish.Title} (monitor {missing} is away)" : Wish.Title);
    }

    private void OnKey(nint window, int key, int scanCode, int action, int modifiers)
    {
        var known = GlfwKeys.From(key);
        if (known != ConsoleKey.None && action != GlfwNames.Release)
        {
            _presses.Add(new KeyPress(known, (modifiers & GlfwNames.ModShift) != 0, action == GlfwNames.Repeat));
        }
    }
}
