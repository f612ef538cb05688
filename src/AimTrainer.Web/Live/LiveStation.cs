using System.Text.Json;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Follows one station and hands its newest picture to any number of readers; a slow reader skips those between.</summary>
public sealed class LiveStation
{
    private readonly ChangeSignal _ofAll;
    private readonly ChangeSignal _own = new();
    private volatile LivePicture _picture;

    internal LiveStation(Station station, ChangeSignal ofAll)
    {
        (Station, _ofAll) = (station, ofAll);
        _picture = Write(1, station.Snapshot);
    }

    /// <summary>The station.</summary>
    public Station Station { get; }

    /// <summary>The newest picture.</summary>
    public LivePicture Picture => _picture;

    /// <summary>The newest picture, as soon as it is newer than the one the caller has.</summary>
    /// <param name="after">The number of the picture that the caller has; 0 for none.</param>
    /// <param name="patience">How long to wait.</param>
    /// <param name="clock">The time.</param>
    /// <param name="cancellationToken">Ends the waiting.</param>
    /// <returns>The picture, or null when none came in time.</returns>
    public async Task<LivePicture?> NextAsync(long after, TimeSpan patience, TimeProvider clock, CancellationToken cancellationToken)
    {
        // A picture's number is the count of changes, and one for the picture at the start.
        if (_picture.Number <= after)
        {
            await _own.WaitAsync(after - 1, patience, clock, cancellationToken).ConfigureAwait(false);
        }

        return _picture is var picture && picture.Number > after ? picture : null;
    }

    internal async Task RunAsync(CancellationToken cancellationToken)
    {
        await foreach (var snapshot in Station.WatchAsync(cancellationToken).ConfigureAwait(false))
        {
            _picture = Write(_picture.Number + 1, snapshot);
            _own.Raise();
            _ofAll.Raise();
        }
    }

    private static LivePicture Write(long number, SessionSnapshot snapshot) => new(
        number,
        JsonSerializer.SerializeToUtf8Bytes(StationView.ForCoach(snapshot), WebJson.Options),
        JsonSerializer.SerializeToUtf8Bytes(StationView.ForBowler(snapshot), WebJson.Options));
}
