namespace AimTrainer.Display;

/// <summary>
/// The windows and monitors of this process, through GLFW. One at a time in a process, and all on one thread: the process's first,
/// where the system is particular (macOS).
/// </summary>
public sealed class WindowSystem : IDisposable
{
    private readonly Lock _lock = new();
    private readonly LostDisplay _lost;
    private bool _ended;

    private WindowSystem(Glfw glfw, LostDisplay lost)
    {
        (Glfw, _lost) = (glfw, lost);
        Monitors = new MonitorList(glfw);
    }

    /// <summary>The monitors.</summary>
    public MonitorList Monitors { get; }

    internal Glfw Glfw { get; }

    /// <summary>Whether the display is gone with all its windows: nothing here may be used any more.</summary>
    internal bool IsLost => _lost.IsLost;

    /// <summary>Starts it on the calling thread.</summary>
    public static WindowSystemStart Start() => Start(GlfwLibrary.TryLoad);

    /// <summary>Starts it with a library that the caller finds.</summary>
    /// <param name="load">From the library's name to its handle; 0 when there is none of that name.</param>
    internal static WindowSystemStart Start(Func<string, nint> load)
    {
        var library = GlfwLibrary.Names.Select(load).FirstOrDefault(handle => handle != 0);
        if (library == 0)
        {
            return new WindowSystemStart(null, $"no window: {GlfwLibrary.Product} is not installed ({GlfwLibrary.HowToGet})");
        }

        Glfw glfw;
        try
        {
            glfw = new Glfw(library);
        }
        catch (EntryPointNotFoundException)
        {
            return new WindowSystemStart(null, $"no window: {GlfwLibrary.Product} is older than version 3.3 ({GlfwLibrary.HowToGet})");
        }

        if (!glfw.Init())
        {
            return new WindowSystemStart(
                null, $"no window: there is no display here ({glfw.TakeError().Words}); start it from a desktop session{GlfwLibrary.WhereDisplaysAreNamed}");
        }

        return new WindowSystemStart(new WindowSystem(glfw, LostDisplay.Listen(library)), null);
    }

    /// <summary>Wakes the loop from whatever thread; nothing once the windows are gone.</summary>
    internal void Wake()
    {
        lock (_lock)
        {
            if (!_ended)
            {
                Glfw.PostEmptyEvent();
            }
        }
    }

    /// <summary>Closes whatever is still open.</summary>
    public void Dispose()
    {
        lock (_lock)
        {
            if (!_ended)
            {
                _ended = true;
                if (!IsLost)
                {
                    Glfw.Terminate();
                }
            }
        }
    }
}
