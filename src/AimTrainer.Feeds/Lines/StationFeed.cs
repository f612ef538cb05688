using AimTrainer.Sessions;

namespace AimTrainer.Feeds;

/// <summary>What is known of one station's line feed: how many are connected and when the last line came.</summary>
internal sealed class StationFeed(TimeSpan silentAfter, TimeProvider clock)
{
    private readonly Lock _lock = new();
    private int _connections;
    private bool _saidSomething;
    private long? _lastLine;
    private long _kept;
    private long _refused;

    public void Came()
    {
        lock (_lock)
        {
            _saidSomething &= _connections > 0;
            _connections++;
        }
    }

    public void Left()
    {
        lock (_lock)
        {
            _connections--;
        }
    }

    public void Line()
    {
        lock (_lock)
        {
            _saidSomething = true;
            _lastLine = clock.GetTimestamp();
        }
    }

    public void Kept() => Interlocked.Increment(ref _kept);

    public void Refused() => Interlocked.Increment(ref _refused);

    public FeedStatus Status()
    {
        lock (_lock)
        {
            TimeSpan? age = _lastLine is { } last ? clock.GetElapsedTime(last) : null;
            var state = _connections == 0 ? FeedState.Absent
                : !_saidSomething ? FeedState.Connecting
                : age > silentAfter ? FeedState.Silent
                : FeedState.Live;
            return new FeedStatus(
                state, age is { } past ? Math.Round(past.TotalSeconds, 1) : null, _connections, Interlocked.Read(ref _kept), Interlocked.Read(ref _refused));
        }
    }
}
