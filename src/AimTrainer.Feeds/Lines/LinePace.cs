namespace AimTrainer.Feeds;

/// <summary>Holds a connection to a pace: a second's worth may come at once, then one for each part of a second.</summary>
internal sealed class LinePace(int mostASecond, TimeProvider clock)
{
    private readonly TimeSpan _each = TimeSpan.FromSeconds(1.0 / mostASecond);
    private readonly long _begun = clock.GetTimestamp();
    private TimeSpan _owed;

    /// <summary>Waits until the next line may be taken.</summary>
    public async ValueTask WaitAsync(CancellationToken cancellationToken)
    {
        var now = clock.GetElapsedTime(_begun);
        _owed = (_owed > now ? _owed : now) + _each;
        var ahead = _owed - now - TimeSpan.FromSeconds(1);
        if (ahead > TimeSpan.Zero)
        {
            await Task.Delay(ahead, clock, cancellationToken).ConfigureAwait(false);
        }
    }
}
