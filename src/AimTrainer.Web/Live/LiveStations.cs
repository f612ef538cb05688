using AimTrainer.Sessions;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Web;

/// <summary>Follows every station of the process for the pages that show them.</summary>
public sealed class LiveStations : BackgroundService
{
    private readonly LiveStation[] _live;

    /// <summary>Follows these stations once the host runs.</summary>
    public LiveStations(IReadOnlyList<Station> stations) => _live = [.. stations.Select(station => new LiveStation(station, Changes))];

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
            await Task.WhenAll(_live.Select(live => live.RunAsync(stoppingToken))).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Asked to stop.
        }
    }
}
