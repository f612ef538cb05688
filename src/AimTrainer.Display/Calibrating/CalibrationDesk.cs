using AimTrainer.Calibration;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>
/// A calibration under way: keys of its window and actions from elsewhere come together here, one after the other, and an accepted map is
/// saved. Safe from many threads.
/// </summary>
/// <param name="task">What is calibrated.</param>
/// <param name="store">Where the map is saved.</param>
/// <param name="changed">Called after each change, on the thread that brought it.</param>
/// <param name="say">Told in words what came of an action; moving the crosshair is not worth a word.</param>
public sealed class CalibrationDesk(CalibrationTask task, MapStore store, Action changed, Action<string> say) : ICalibrationDoor
{
    private readonly Lock _lock = new();
    private readonly TaskCompletionSource _over = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile CalibrationView? _view;

    /// <inheritdoc/>
    public int Station => task.Place.Station;

    /// <inheritdoc/>
    public string Projector => task.Place.Projector;

    /// <inheritdoc/>
    public long Version => Now.Version;

    /// <inheritdoc/>
    public string StateJson => CalibrationStateJson.Of(Now);

    /// <summary>The calibration now.</summary>
    /// <exception cref="InvalidOperationException">It was not started yet.</exception>
    public CalibrationView Now => _view ?? throw new InvalidOperationException("the calibration was not started yet");

    /// <summary>Done when nothing more is to be done: the window may close.</summary>
    public Task Over => _over.Task;

    /// <summary>Starts it, or tells it that its monitor is another now.</summary>
    /// <param name="picture">The picture that marks are placed in; what it was at the start counts.</param>
    /// <param name="monitor">The monitor and mode; null for an ordinary window, where nothing is saved.</param>
    /// <param name="missing">The monitor that the window should cover and cannot; null when it is where it should be.</param>
    public void Placed(PictureSize picture, MonitorMode? monitor, string? missing)
    {
        lock (_lock)
        {
            if (_view is not { } view)
            {
                var fitting = new FitSettings { Picture = picture, LaneWidth = task.Lane.Width, Stretch = task.Stretch };
                _view = new CalibrationView(task, MarkPlacing.Begin(task.Lane, fitting), monitor, null, TroubleOf(missing, monitor, monitor), 0);
            }
            else
            {
                _view = view with { Trouble = TroubleOf(missing, view.Monitor, monitor), Version = view.Version + 1 };
            }
        }

        changed();
    }

    /// <inheritdoc/>
    public CalibrationAnswer Do(string actionJson)
    {
        var (action, problem) = CalibrationActionJson.Read(actionJson);
        return action is null
            ? new CalibrationAnswer(false, problem, StateJson)
            : new CalibrationAnswer(true, "", CalibrationStateJson.Of(Apply(action)));
    }

    /// <summary>Does one action. With the calibration accepted or given up, accepting or giving up once more closes it.</summary>
    /// <returns>What there is after it.</returns>
    public CalibrationView Apply(PlacingAction action)
    {
        CalibrationView after;
        lock (_lock)
        {
            after = After(Now, action);
            _view = after = after with { Version = after.Version + 1 };
        }

        if (action is not PlacingAction.Nudge && after.Placing.Said.Length > 0)
        {
            say(after.Placing.Said);
        }

        changed();
        return after;
    }

    private static string? TroubleOf(string? missing, MonitorMode? begun, MonitorMode? now) => missing is not null
        ? $"Monitor {missing} is away. Connect it again; no map can be saved until then."
        : begun != now ? $"The monitor has changed: marks were placed on {begun?.ToString() ?? "a window"}, now it is {now?.ToString() ?? "a window"}. Set it back, or start again."
        : null;

    private CalibrationView After(CalibrationView view, PlacingAction action)
    {
        if (view.Placing.Phase != PlacingPhase.Placing && action is (PlacingAction.Accept or PlacingAction.Abandon))
        {
            _over.TrySetResult();
            return view with { Placing = view.Placing with { Said = "this calibration is closed" } };
        }

        var placing = view.Placing.Apply(action);
        return (view.Placing.Phase, placing.Phase) switch
        {
            (PlacingPhase.Placing, PlacingPhase.Accepted) => Saved(view, placing),
            (PlacingPhase.Accepted, PlacingPhase.Placing) => TakenBack(view, placing),
            _ => view with { Placing = placing },
        };
    }

    private CalibrationView Saved(CalibrationView view, MarkPlacing accepted)
    {
        if (view.Trouble is not null)
        {
            return view with { Placing = view.Placing with { Said = $"not saved: {view.Trouble}" } };
        }

        if (view.Monitor is not { } monitor)
        {
            return view with { Placing = accepted with { Said = "in an ordinary window a map is for looking at, and is not saved; give --monitor to save one" } };
        }

        var stored = store.SaveJoined(SavedMap.Of(accepted.Preview!.Fit!) with { Place = task.Place, Monitor = monitor });
        if (stored.File is null)
        {
            return view with { Placing = view.Placing with { Said = stored.Problem } };
        }

        var said = string.Join("; ", stored.Remarks.AsEnumerable().Prepend($"saved as {Path.GetFileName(stored.File)}"));
        return view with { Placing = accepted with { Said = said }, SavedFile = stored.File };
    }

    private CalibrationView TakenBack(CalibrationView view, MarkPlacing placing)
    {
        if (view.SavedFile is { } file && store.TakeBack(file) is { File: null } failed)
        {
            return view with { Placing = view.Placing with { Said = failed.Problem } };
        }

        return view with
        {
            Placing = view.SavedFile is null ? placing : placing with { Said = $"{placing.Said}; the map that was saved is put aside" },
            SavedFile = null,
        };
    }
}
