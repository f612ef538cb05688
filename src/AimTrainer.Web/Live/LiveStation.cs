using System.Text.Json;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Follows one station and hands its newest picture to any number of readers; a slow reader skips those between.</summary>
public sealed class LiveStation
{
    private readonly ChangeSignal _ofAll;
    private readonly ChangeSignal _own = new();
    private readonly IFeedWatch? _feeds;
    private readonly TimeProvider _clock;
    private readonly Lock _writing = new();
    private volatile LivePicture _picture;
    private FeedState? _shownFeed;

    internal LiveStation(Station station, ChangeSignal ofAll, IFeedWatch? feeds, TimeProvider clock)
    {
        (Station, _ofAll, _feeds, _clock) = (station, ofAll, feeds, clock);
        _picture = Write(1);
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
        await foreach (var _ in Station.WatchAsync(cancellationToken).ConfigureAwait(false))
        {
            Renew();
        }
    }

    /// <summary>How the feed stands now; null where none is listened for.</summary>
    internal FeedStatus? Feed => _feeds?.Of(Station.Number);

    /// <summary>The coach's view as it is now, with the age of the feed's last line.</summary>
    internal StationView ForCoach() => StationView.ForCoach(Station.Snapshot) with { Feed = _feeds?.Of(Station.Number) };

    /// <summary>Shows the feed's state when it has become another.</summary>
    internal void LookAtFeed()
    {
        if (_feeds?.Of(Station.Number)?.State != _shownFeed)
        {
            Renew();
        }
    }

    private void Renew()
    {
        lock (_writing)
        {
            _picture = Write(_picture.Number + 1);
            _own.Raise();
        }

        _ofAll.Raise();
    }

    private LivePicture Write(long number)
    {
        // Both views are of one snapshot; a newer one that comes meanwhile has its own picture next.
        var madeAt = _clock.GetTimestamp();
        var snapshot = Station.Snapshot;
        var feed = _feeds?.Of(Station.Number);
        _shownFeed = feed?.State;
        return new LivePicture(
            number,
            JsonSerializer.SerializeToUtf8Bytes(StationView.ForCoach(snapshot) with { Feed = feed }, WebJson.Options),
            JsonSerializer.SerializeToUtf8Bytes(StationView.ForBowler(snapshot), WebJson.Options))
        {
            MadeAt = madeAt,
        };
    }
}
