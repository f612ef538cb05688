using AimTrainer.Domain;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Sessions;

/// <summary>Runs the stations of this process, and tells them the time while a block is limited by minutes.</summary>
/// <param name="stations">The stations.</param>
/// <param name="clock">The time.</param>
public sealed class StationService(IReadOnlyList<Station> stations, TimeProvider clock) : BackgroundService
{
    private static readonly TimeSpan TickEvery = TimeSpan.FromSeconds(1);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var running = stations.SelectMany(station => new[] { TickAsync(station, stoppingToken), station.RunAsync(stoppingToken) });
        try
        {
            await Task.WhenAll(running).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Asked to stop: every waiting sender has been answered by its station.
        }
    }

    /// <summary>Each station by itself, so that one whose store is slow does not keep the time from the others.</summary>
    private async Task TickAsync(Station station, CancellationToken cancellationToken)
    {
        using var timer = new PeriodicTimer(TickEvery, clock);
        while (await timer.WaitForNextTickAsync(cancellationToken).ConfigureAwait(false))
        {
            if (station.Snapshot is { Phase: SessionPhase.Throwing, Block.Until.Minutes: not null })
            {
                await station.FollowAsync(new SessionInput.ClockTick(clock.GetUtcNow()), cancellationToken).ConfigureAwait(false);
            }
        }
    }
}
