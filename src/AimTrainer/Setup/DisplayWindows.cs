using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>The windows of a command: opened and drawn on the main thread while the command goes on elsewhere.</summary>
internal sealed class DisplayWindows : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly TaskCompletionSource _opened = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Action<string> _say;
    private volatile DisplayLoop? _loop;
    private Task<int> _showing = Task.FromResult(0);
    private Task _watching = Task.CompletedTask;
    private Task _stopLooking = Task.CompletedTask;

    private DisplayWindows(int station, Action<string> say)
    {
        _say = say;
        News = new NewsSlot(new DisplayNews(SessionSnapshot.Idle(station), null), Wake);
        Dark = new Darkness(Wake);
    }

    /// <summary>What they show: whoever has news puts it here.</summary>
    public NewsSlot News { get; }

    /// <summary>Whether they are dark, whatever they show otherwise. Each source of darkness has a part of its own.</summary>
    public Darkness Dark { get; }

    /// <summary>Has them look for what is new, from whatever thread.</summary>
    public void Wake() => _loop?.Wake();

    /// <summary>Why there are no windows, in one line that says what to do; null when there is at least one.</summary>
    public string? Problem { get; private set; }

    /// <summary>Done when the last window is closed: 0, or 1 when the display was lost with it.</summary>
    public Task<int> Closed => _showing;

    /// <summary>Opens them.</summary>
    /// <param name="console">Lends the thread.</param>
    /// <param name="station">Whose session they show.</param>
    /// <param name="wishes">The displays; none opens nothing.</param>
    /// <param name="contents">Makes what a display shows, on the main thread.</param>
    /// <param name="mayCoverPrimary">See <see cref="DisplayMonitors.For"/>.</param>
    /// <param name="say">Told where the windows are, and of whatever happens to them.</param>
    /// <param name="stopFolder">The data folder whose emergency stop holds for them.</param>
    /// <param name="opening">Done before the first window is opened, with their darkness: what else may hold them dark. Null for nothing.</param>
    /// <exception cref="UserException">A monitor is named that is not there.</exception>
    public static async Task<DisplayWindows> OpenAsync(
        UserConsole console,
        int station,
        IReadOnlyList<DisplayWish> wishes,
        Func<DisplayWish, NewsSlot, IWindowContent> contents,
        bool mayCoverPrimary,
        Action<string> say,
        string stopFolder,
        Func<Darkness, Task>? opening = null)
    {
        var windows = new DisplayWindows(station, say);
        if (wishes.Count > 0)
        {
            // Before the first window: not one frame is shown while projection is stopped.
            var stop = new StopLook(stopFolder, windows.Dark.Part(), TimeProvider.System);
            stop.Look();
            windows._stopLooking = stop.RunAsync(windows._stop.Token);
            try
            {
                await (opening?.Invoke(windows.Dark) ?? Task.CompletedTask).ConfigureAwait(false);
            }
            catch
            {
                await windows.DisposeAsync().ConfigureAwait(false);
                throw;
            }

            windows._showing = console.MainThread.DoAsync(() => windows.Show(wishes, contents, mayCoverPrimary));
            try
            {
                await windows._opened.Task.ConfigureAwait(false);
            }
            catch
            {
                await windows.DisposeAsync().ConfigureAwait(false);
                throw;
            }
        }

        return windows;
    }

    /// <summary>Shows a station of this process from now on, until it stops.</summary>
    public void Watch(Station station) => _watching = WatchAsync(station);

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync().ConfigureAwait(false);
        try
        {
            await Task.WhenAll(_watching, _stopLooking).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (_stop.IsCancellationRequested)
        {
            // Asked to stop.
        }

        // What went wrong while they were opened was thrown to whoever opened them.
        await ((Task)_showing).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stop.Dispose();
    }

    private async Task WatchAsync(Station station)
    {
        await foreach (var snapshot in station.WatchAsync(_stop.Token).ConfigureAwait(false))
        {
            News.Put(new DisplayNews(snapshot, null));
        }
    }

    private int Show(IReadOnlyList<DisplayWish> wishes, Func<DisplayWish, NewsSlot, IWindowContent> contents, bool mayCoverPrimary)
    {
        try
        {
            var start = WindowSystem.Start();
            if (start.System is not { } system)
            {
                Problem = start.Problem;
                _opened.SetResult();
                return ExitCodes.Failed;
            }

            using (system)
            {
                using var loop = new DisplayLoop(system, TimeProvider.System, _say);
                Open(loop, system, wishes, contents, mayCoverPrimary);
                _loop = loop;
                _opened.SetResult();
                loop.Run(_stop.Token);
                _loop = null;
                return loop.WasLost ? ExitCodes.Failed : ExitCodes.Ok;
            }
        }
        catch (Exception exception) when (_opened.TrySetException(exception))
        {
            // Thrown to whoever waits for the windows.
        }

        return ExitCodes.Failed;
    }

    private void Open(
        DisplayLoop loop, WindowSystem system, IReadOnlyList<DisplayWish> wishes, Func<DisplayWish, NewsSlot, IWindowContent> contents, bool mayCoverPrimary)
    {
        var monitors = DisplayMonitors.For(wishes, system.Monitors.All, mayCoverPrimary);
        var problems = new List<string>();
        for (var i = 0; i < wishes.Count; i++)
        {
            var wish = new WindowWish
            {
                Title = wishes[i].Title,
                Covers = monitors[i],
                HidesPointer = monitors[i] is not null,
                TakesKeys = wishes[i].Kind == DisplayKind.Calibration,
            };
            if (loop.Open(wish, new DarkenedContent(contents(wishes[i], News), Dark, wishes[i].Kind != DisplayKind.Overhead, ThemeLibrary.Default)) is { } problem)
            {
                problems.Add(problem);
            }
        }

        if (loop.Windows == 0)
        {
            Problem = problems[0];
        }
        else
        {
            problems.ForEach(_say);
        }
    }
}
