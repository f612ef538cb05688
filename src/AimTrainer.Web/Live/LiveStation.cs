using System.Text.Json;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Follows one station and hands its newest picture to any number of readers; a slow reader skips those between.</summary>
public sealed class LiveStation
{
    private readonly Lock _lock = new();
    private TaskCompletionSource _changed = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private LivePicture _picture;

    internal LiveStation(Station station)
    {
        Station = station;
        _picture = Write(1, station.Snapshot);
    }

    /// <summary>The station.</summary>
    public Station Station { get; }

    /// <summary>The newest picture.</summary>
    public LivePicture Picture
    {
        get
        {
            lock (_lock)
            {
                return _picture;
            }
        }
    }

    /// <summary>The newest picture, as soon as it is newer than the one the caller has.</summary>
    /// <param name="after">The number of the picture that the caller has; 0 for none.</param>
    /// <param name="patience">How long to wait.</param>
    /// <param name="clock">The time.</param>
    /// <param name="cancellationToken">Ends the waiting.</param>
    /// <returns>The picture, or null when none came in time.</returns>
    public async Task<LivePicture?> NextAsync(long after, TimeSpan patience, TimeProvider clock, CancellationToken cancellationToken)
    {
        Task changed;
        lock (_lock)
        {
            if (_picture.Number > after)
            {
                return _picture;
            }

            changed = _changed.Task;
        }

        try
        {
            await changed.WaitAsync(patience, clock, cancellationToken).ConfigureAwait(false);
            return Picture;
        }
        catch (TimeoutException)
        {
            return null;
        }
    }

    internal async Task RunAsync(CancellationToken cancellationToken)
    {
        await foreach (var snapshot in Station.WatchAsync(cancellationToken).ConfigureAwait(false))
        {
            var picture = Write(Picture.Number + 1, snapshot);
            TaskCompletionSource before;
            lock (_lock)
            {
                _picture = picture;
                before = _changed;
                _changed = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            }

            before.SetResult();
        }
    }

    private static LivePicture Write(long number, SessionSnapshot snapshot) => new(
        number,
        JsonSerializer.SerializeToUtf8Bytes(StationView.ForCoach(snapshot), WebJson.Options),
        JsonSerializer.SerializeToUtf8Bytes(StationView.ForBowler(snapshot), WebJson.Options));
}
