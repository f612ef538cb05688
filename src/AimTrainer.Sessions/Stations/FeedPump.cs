using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Carries shots from a feed to a station, one after the other; the next is taken only when the last is kept.</summary>
/// <param name="station">Where the shots go.</param>
/// <param name="clock">The time, for waiting.</param>
/// <param name="kept">Told of every step that was kept.</param>
/// <param name="report">Told of everything that could not be read or was not taken.</param>
public sealed class FeedPump(Station station, TimeProvider clock, Action<LogEntry> kept, Action<string> report)
{
    /// <summary>How long it waits before it offers a shot again that the store could not keep.</summary>
    public static readonly TimeSpan RetryAfter = TimeSpan.FromSeconds(1);

    /// <summary>Runs until the feed ends, the session ends, or it is cancelled.</summary>
    public async Task RunAsync(IShotFeed feed, CancellationToken cancellationToken)
    {
        await foreach (var item in feed.ReadAsync(cancellationToken).ConfigureAwait(false))
        {
            switch (item)
            {
                case FeedItem.Unreadable unreadable:
                    report(unreadable.Problem.ToString());
                    break;
                case FeedItem.ShotRead read:
                    await OfferAsync(feed, read, cancellationToken).ConfigureAwait(false);
                    break;
                default:
                    break;
            }

            if (station.Snapshot.Phase == SessionPhase.Ended)
            {
                return;
            }
        }
    }

    private async Task OfferAsync(IShotFeed feed, FeedItem.ShotRead read, CancellationToken cancellationToken)
    {
        var setup = station.Snapshot.Setup;
        if (setup is not null && ShotOwner.WhyNotOf(setup, read) is { } why)
        {
            report($"{feed.Name}: {(read.Line > 0 ? $"line {read.Line}: " : "")}{why}");
            return;
        }

        // A shot that says whose it is goes to the session that was looked at: the turn may pass before it comes to the door.
        var session = read.Bowler is null ? null : setup?.SessionId;
        var told = false;
        while (true)
        {
            switch (await station.ThrowAsync(read.Shot, session, null, cancellationToken).ConfigureAwait(false))
            {
                case StationReply.NotKept notKept:
                    if (!told)
                    {
                        report($"{feed.Name}: {notKept.Why}; the shot is offered again until it is kept");
                        told = true;
                    }

                    await Task.Delay(RetryAfter, clock, cancellationToken).ConfigureAwait(false);
                    break;
                case StationReply.Refused refused:
                    report($"{feed.Name}: {refused.Why}");
                    return;
                case StationReply.Kept { Entry: { } entry }:
                    kept(entry);
                    return;
                default:
                    return;
            }
        }
    }
}
