using AimTrainer.Sessions;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Web;

/// <summary>Follows every station of the process for the pages that show them.</summary>
public sealed class LiveStations : BackgroundService
{
    private static readonly TimeSpan LookAtFeedsEvery = TimeSpan.FromSeconds(1);

    private readonly LiveStation[] _live;
    private readonly TimeProvider _clock;
    private readonly bool _hasFeeds;

    /// <summary>Follows these stations once the host runs.</summary>
    /// <param name="stations">The stations.</param>
    /// <param name="clock">The time.</param>
    /// <param name="feeds">Their line feeds, where lines are taken.</param>
    public LiveStations(IReadOnlyList<Station> stations, TimeProvider clock, IFeedWatch? feeds = null)
    {
        (_clock, _hasFeeds) = (clock, feeds is not null);
        _live = [.. stations.Select(station => new LiveStation(station, Changes, feeds, clock))];
    }

    internal ChangeSignal Changes { get; } = new();

    /// <summary>How many stations there are.</summary>
    public int Count => _live.Length;

    /// <summary>All of them, in order.</summary>
    public IReadOnlyList<LiveStation> All => _live;

    /// <summary>One by its number, from 1; null when there is none.</summary>
    public LiveStation? Find(int number) => number >= 1 && number <= _live.Length ? _live[number - 1] : null;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            await Task.WhenAll(_live.Select(live => live.RunAsync(stoppingToken)).Append(LookAtFeedsAsync(stoppingToken))).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Asked to stop.
        }
    }

    /// <summary>That a feed has fallen silent is told by no line of it: so it is looked for.</summary>
    private async Task LookAtFeedsAsync(CancellationToken cancellationToken)
    {
        using var timer = new PeriodicTimer(LookAtFeedsEvery, _clock);
        while (_hasFeeds && await timer.WaitForNextTickAsync(cancellationToken).ConfigureAwait(false))
        {
            foreach (var live in _live)
            {
                live.LookAtFeed();
            }
        }
    }
}
