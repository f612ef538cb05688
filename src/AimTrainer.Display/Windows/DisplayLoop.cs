using System.Diagnostics.CodeAnalysis;
using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>
/// Shows the windows of this process, on the thread that made the window system. It sleeps until there is news, draws what changed,
/// and sleeps again; in the steady state it allocates nothing.
/// </summary>
public sealed class DisplayLoop : IDisposable
{
    /// <summary>How often the monitors' places and modes are looked at; that one came or went is seen at once.</summary>
    private static readonly TimeSpan LookAtMonitorsEvery = TimeSpan.FromSeconds(1);

    private readonly WindowSystem _system;
    private readonly TimeProvider _clock;
    private readonly Action<string> _say;
    private readonly List<Shown> _windows = [];
    private GlfwWindow? _current;
    private long _newsAt;

    /// <summary>A loop without windows yet.</summary>
    /// <param name="system">The windows of this process; the caller disposes of it after the loop.</param>
    /// <param name="clock">The time.</param>
    /// <param name="say">Told in words what a person should know: a monitor that went, a window that failed.</param>
    public DisplayLoop(WindowSystem system, TimeProvider clock, Action<string> say) => (_system, _clock, _say) = (system, clock, say);

    /// <summary>How long its frames took.</summary>
    public FrameStatistics Statistics { get; } = new();

    /// <summary>How many windows are open.</summary>
    public int Windows => _windows.Count;

    /// <summary>Whether the display went away with its windows.</summary>
    public bool WasLost => _system.IsLost;

    /// <summary>Opens a window.</summary>
    /// <param name="wish">How it is to be.</param>
    /// <param name="content">What it shows; disposed of with the window, also when there comes none.</param>
    /// <returns>Null, or why there is no window and what to do, in one line.</returns>
    [SuppressMessage("Design", "CA1031:Do not catch general exception types", Justification = "A display that fails must not take a session with it; what happened is said.")]
    public string? Open(WindowWish wish, IWindowContent content)
    {
        var (window, problem) = GlfwWindow.Open(_system, wish);
        if (window is null)
        {
            content.Dispose();
            return problem;
        }

        try
        {
            _current = window;
            content.Placed(window.Place);
            content.Painter.Start(window.Gl);
        }
        catch (Exception exception)
        {
            content.Dispose();
            window.Dispose();
            _current = null;
            return $"no window: its drawing could not be started ({exception.Message})";
        }

        SayWhereItIs(window);
        _windows.Add(new Shown(window, content));
        return null;
    }

    /// <summary>Wakes the loop, from whatever thread: there is news for a window.</summary>
    public void Wake() => Wake(_clock.GetTimestamp());

    /// <summary>The same for news that is older than its arrival here; <see cref="Statistics"/> count from then.</summary>
    /// <param name="newsAt">When it came about, as the loop's clock stamps it.</param>
    public void Wake(long newsAt)
    {
        Interlocked.CompareExchange(ref _newsAt, newsAt, 0);
        _system.Wake();
    }

    /// <summary>Shows the windows until asked to stop or the last is closed.</summary>
    public void Run(CancellationToken stop)
    {
        using var wake = stop.Register(_system.Wake);
        var monitorsLookedAt = _clock.GetTimestamp();
        while (!stop.IsCancellationRequested && _windows.Count > 0)
        {
            ShowNews();
            if (ForgetsLostWindows())
            {
                break;
            }

            CloseWhatIsDone();
            if (_windows.Count == 0 || stop.IsCancellationRequested)
            {
                break;
            }

            // News that came meanwhile has left an event behind, so this returns at once.
            _system.Glfw.WaitEvents(LongestSleep().TotalSeconds);
            if (ForgetsLostWindows())
            {
                break;
            }

            if (_system.Monitors.OneCameOrWent() || _clock.GetElapsedTime(monitorsLookedAt) >= LookAtMonitorsEvery)
            {
                monitorsLookedAt = _clock.GetTimestamp();
                FollowMonitors();
            }
        }
    }

    /// <summary>Closes the windows.</summary>
    public void Dispose()
    {
        foreach (var shown in _windows)
        {
            Close(shown);
        }

        _windows.Clear();
    }

    /// <summary>Windows of a display that is gone cannot even be closed.</summary>
    private bool ForgetsLostWindows()
    {
        if (_system.IsLost && _windows.Count > 0)
        {
            _say($"the display was lost ({string.Join(", ", _windows.Select(shown => shown.Window.Wish.Title))}); whatever else runs here goes on");
            _windows.Clear();
        }

        return _system.IsLost;
    }

    private void ShowNews()
    {
        var newsAt = Interlocked.Exchange(ref _newsAt, 0);
        var drawn = false;
        for (var i = 0; i < _windows.Count; i++)
        {
            drawn |= Show(_windows[i]);
        }

        if (drawn && newsAt != 0)
        {
            Statistics.NewsSubmitted(_clock.GetElapsedTime(newsAt));
        }
    }

    /// <returns>Whether a frame was submitted.</returns>
    [SuppressMessage("Design", "CA1031:Do not catch general exception types", Justification = "A display that fails must not take a session with it; what happened is said.")]
    private bool Show(Shown shown)
    {
        try
        {
            TakeKeys(shown);
            var window = shown.Window;
            var size = window.Size;
            var changed = shown.Content.Refresh(size) | window.TakeDamage() | size != shown.DrawnSize;
            if (!changed || !window.HasPicture)
            {
                return false;
            }

            if (_current != window)
            {
                window.MakeCurrent();
                _current = window;
            }

            shown.Content.Painter.Paint(size);
            window.Submit();
            shown.DrawnSize = size;
            Statistics.FrameSubmitted();
            return true;
        }
        catch (Exception exception)
        {
            _say($"{shown.Window.Wish.Title}: closed, because drawing failed ({exception.Message})");
            shown.IsDone = true;
            return false;
        }
    }

    private static void TakeKeys(Shown shown)
    {
        foreach (var press in shown.Window.Presses)
        {
            shown.IsDone |= !shown.Content.Press(press);
        }

        shown.Window.ForgetPresses();
    }

    private void CloseWhatIsDone()
    {
        for (var i = _windows.Count - 1; i >= 0; i--)
        {
            if (_windows[i].IsDone || _windows[i].Window.CloseIsAsked)
            {
                Close(_windows[i]);
                _windows.RemoveAt(i);
            }
        }
    }

    private void Close(Shown shown)
    {
        shown.Window.MakeCurrent();
        shown.Content.Dispose();
        shown.Window.Dispose();
        _current = null;
    }

    private void FollowMonitors()
    {
        if (!_system.Monitors.Refresh())
        {
            return;
        }

        foreach (var shown in _windows)
        {
            if (shown.Window.PlaceAgain(_system.Monitors))
            {
                SayWhereItIs(shown.Window);
                shown.Content.Placed(shown.Window.Place);
                shown.DrawnSize = null;
            }
        }
    }

    private void SayWhereItIs(GlfwWindow window)
    {
        var title = window.Wish.Title;
        _say(window.Place switch
        {
            { Missing: { } missing, Monitor: null } => $"{title}: monitor {missing} is away and no other is there; it is shown again as soon as one is",
            { Missing: { } missing, Monitor: { } other } => $"{title}: monitor {missing} is away; shown in a window on {other.Name} until it is back",
            { Borderless: true, Monitor: { } monitor } => $"{title}: on monitor {monitor.Number} ({monitor.Name}, {monitor.Mode.Width}x{monitor.Mode.Height})",
            { Monitor: null } => $"{title}: no monitor is connected; it is shown as soon as one is",
            { Monitor: { } monitor } => $"{title}: in a window on {monitor.Name}",
        });
    }

    private TimeSpan LongestSleep()
    {
        var longest = LookAtMonitorsEvery;
        for (var i = 0; i < _windows.Count; i++)
        {
            if (_windows[i].Content.ChangesIn is { } soon && soon < longest)
            {
                longest = soon;
            }
        }

        // Waiting 0 seconds is refused by no one, but a negative time is.
        return longest < TimeSpan.Zero ? TimeSpan.Zero : longest;
    }

    private sealed class Shown(GlfwWindow window, IWindowContent content)
    {
        public GlfwWindow Window { get; } = window;

        public IWindowContent Content { get; } = content;

        /// <summary>The size of the last frame; null when it must be drawn again.</summary>
        public PictureSize? DrawnSize { get; set; }

        public bool IsDone { get; set; }
    }
}
