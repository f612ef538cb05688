using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>A calibration by hand in a window, until it is closed.</summary>
/// <param name="console">Told what happens; lends the thread for the window.</param>
/// <param name="theme">The colours.</param>
/// <param name="dataFolder">The folder of the records: its emergency stop makes these windows dark too.</param>
internal sealed class CalibrationRun(UserConsole console, Theme theme, string dataFolder)
{
    private readonly Lock _out = new();

    /// <summary>Told of the calibration once its window is open: whoever else may act in it. Null for nobody.</summary>
    public Action<ICalibrationDoor>? Opened { get; init; }

    /// <summary>Told of each change of it, on the thread that brought the change. Null for nobody.</summary>
    public Action? Changed { get; init; }

    /// <summary>Done before the window is opened, with its darkness: what else may hold it dark. Null for nothing.</summary>
    public Func<Darkness, Task>? Opening { get; init; }

    /// <summary>Places marks.</summary>
    /// <param name="task">What is calibrated.</param>
    /// <param name="wish">The window.</param>
    /// <param name="store">Where the map is saved.</param>
    /// <param name="cancellationToken">Closes the window; what was saved stays.</param>
    /// <exception cref="UserException">There is no such monitor, or no window can be opened.</exception>
    public async Task<int> PlaceAsync(CalibrationTask task, DisplayWish wish, MapStore store, CancellationToken cancellationToken)
    {
        foreach (var line in PlacingCautions.All.AsEnumerable().Concat(PlacingKeys.Help.Select(help => $"  {help.Key,-20} {help.Does}")))
        {
            Say(line);
        }

        DisplayWindows? windows = null;
        void Tell()
        {
            windows?.Wake();
            Changed?.Invoke();
        }

        var desk = new CalibrationDesk(task, store, Tell, Say);
        windows = await DisplayWindows.OpenAsync(console, task.Place.Station, [wish], (_, _) => new CalibrationContent(desk, theme), mayCoverPrimary: true, console.Error.WriteLine, dataFolder, Opening)
            .ConfigureAwait(false);
        await using (windows.ConfigureAwait(false))
        {
            if (windows.Problem is { } problem)
            {
                throw new UserException(problem, ExitCodes.Failed);
            }

            Opened?.Invoke(desk);
            var code = await EndAsync(windows, desk.Over, cancellationToken).ConfigureAwait(false);
            Report(desk.Now);
            return code;
        }
    }

    /// <summary>Shows the check picture over the saved map.</summary>
    /// <param name="maps">The map.</param>
    /// <param name="station">Whose projector.</param>
    /// <param name="lane">The lane with its marks.</param>
    /// <param name="wish">The window.</param>
    /// <param name="cancellationToken">Closes the window.</param>
    /// <exception cref="UserException">There is no such monitor, or no window can be opened.</exception>
    public async Task<int> CheckAsync(DisplayMaps maps, int station, LaneProfile lane, DisplayWish wish, CancellationToken cancellationToken)
    {
        foreach (var line in PlacingCautions.All)
        {
            Say(line);
        }

        var windows = await DisplayWindows.OpenAsync(console, station, [wish], (_, _) => new CheckContent(maps.For, lane, theme), mayCoverPrimary: true, console.Error.WriteLine, dataFolder, Opening)
            .ConfigureAwait(false);
        await using (windows.ConfigureAwait(false))
        {
            return windows.Problem is { } problem
                ? throw new UserException(problem, ExitCodes.Failed)
                : await EndAsync(windows, Task.Delay(Timeout.Infinite, cancellationToken), cancellationToken).ConfigureAwait(false);
        }
    }

    private static async Task<int> EndAsync(DisplayWindows windows, Task over, CancellationToken cancellationToken)
    {
        try
        {
            await Task.WhenAny(windows.Closed, over).WaitAsync(cancellationToken).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            // Somebody asked the program to stop; an accepted map was saved when it was accepted.
        }

        return windows.Closed.IsCompleted ? await windows.Closed.ConfigureAwait(false) : ExitCodes.Ok;
    }

    private void Report(CalibrationView view)
    {
        if (view.SavedFile is not { } file)
        {
            Say("No map was saved; the one that was used before stays.");
            return;
        }

        var fit = view.Placing.Preview!.Fit!;
        CalibrationText.Fit(fit, CalibrationText.Warnings(fit, view.Task.Lane, ShowingSettings.Usual), ShowingSettings.Usual, console);
        Say($"Saved: {file}");
    }

    private void Say(string text)
    {
        lock (_out)
        {
            console.Out.WriteLine(text);
        }
    }
}
