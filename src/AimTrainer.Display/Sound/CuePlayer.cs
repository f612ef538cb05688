using AimTrainer.Sessions;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Display;

/// <summary>
/// Listens to a station and plays what <see cref="CueBook"/> says. It hears pictures, never holds the station up, and of pictures
/// that come faster than it listens the newest counts.
/// </summary>
/// <param name="station">The station.</param>
/// <param name="mixer">Plays the cues.</param>
/// <param name="clips">How long they are.</param>
/// <param name="speaker">Says numbers after the cues; null for none. The caller disposes of it.</param>
public sealed class CuePlayer(Station station, CueMixer mixer, CueClips clips, ISpeaker? speaker) : BackgroundService
{
    private readonly Lock _lock = new();
    private SessionSnapshot _last = station.Snapshot;

    /// <summary>Takes the last picture too, which may not have been listened to yet, and stops.</summary>
    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken).ConfigureAwait(false);
        Take(station.Snapshot);
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            await foreach (var snapshot in station.WatchAsync(stoppingToken).ConfigureAwait(false))
            {
                Take(snapshot);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Asked to stop.
        }
    }

    private void Take(SessionSnapshot snapshot)
    {
        CuePlan plan;
        lock (_lock)
        {
            plan = CueBook.Between(_last, snapshot);
            _last = snapshot;
        }

        if (plan == CuePlan.Nothing)
        {
            return;
        }

        mixer.Play(plan);
        if (plan.Words is { } words)
        {
            speaker?.Say(words, clips.Length(plan));
        }
        else
        {
            speaker?.Hush();
        }
    }
}
