using System.Runtime.CompilerServices;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds;

/// <summary>An invented bowler who throws at whatever is shown.</summary>
/// <param name="settings">The bowler.</param>
/// <param name="lane">The lane.</param>
/// <param name="nextAim">Waits until the next shot may be thrown, and gives what is then shown; null ends the feed.</param>
/// <param name="pace">How long each throw takes; none when zero.</param>
/// <param name="time">The clock for the pace.</param>
/// <param name="firstNumber">Number of the first shot, 1 unless a session goes on.</param>
/// <param name="path">How the ball runs; straight when null.</param>
public sealed class SimulatedShotFeed(
    SimulatedBowlerSettings settings, LaneProfile lane, Func<CancellationToken, ValueTask<Aim?>> nextAim, TimeSpan pace, TimeProvider time,
    int firstNumber = 1, ISimulatedPath? path = null) : IShotFeed
{
    /// <inheritdoc/>
    public string Name => "simulated bowler";

    /// <inheritdoc/>
    public async IAsyncEnumerable<FeedItem> ReadAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        for (var number = firstNumber; ; number++)
        {
            if (pace > TimeSpan.Zero)
            {
                await Task.Delay(pace, time, cancellationToken).ConfigureAwait(false);
            }

            cancellationToken.ThrowIfCancellationRequested();
            if (await nextAim(cancellationToken).ConfigureAwait(false) is not { } aim)
            {
                yield break;
            }

            yield return new FeedItem.ShotRead(SimulatedBowler.Throw(settings, number, aim, lane, path), settings.Name, settings.Hand, number);
        }
    }
}
