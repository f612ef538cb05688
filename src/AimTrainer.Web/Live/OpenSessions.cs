using AimTrainer.Sessions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Web;

/// <summary>
/// At the start of the host: every station goes on with the session that it was left with. It is done before the host listens (a web
/// host's server is started last): a shot that a page kept while the host was away must find its session here, not an empty lane.
/// </summary>
public sealed partial class OpenSessions(IReadOnlyList<Station> stations, ISessionStore store, ILogger<OpenSessions> log, ILineupKeeper? lineups = null) : IHostedService
{
    /// <inheritdoc/>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        foreach (var station in stations)
        {
            if (await GoOnTogetherAsync(station, cancellationToken).ConfigureAwait(false))
            {
                continue;
            }

            var left = await store.ListAsync(new SessionFilter { Station = station.Number, Ended = false, Limit = 1 }, cancellationToken).ConfigureAwait(false);
            if (left.Count > 0 && await GoOnAsync(station, left[0].SessionId, cancellationToken).ConfigureAwait(false) is { } why)
            {
                SayNotGoneOn(log, station.Number, left[0].SessionId, why);
            }
        }
    }

    /// <summary>Why it does not go on, or null. What is wrong with one lane's log must not keep the others from their work.</summary>
    private async Task<string?> GoOnAsync(Station station, string sessionId, CancellationToken cancellationToken)
    {
        try
        {
            var stored = await store.FindAsync(sessionId, cancellationToken).ConfigureAwait(false);
            return (stored is null ? null : await station.GoOnAsync(stored, cancellationToken).ConfigureAwait(false)) switch
            {
                StationReply.Refused refused => refused.Why,
                StationReply.NotKept notKept => notKept.Why,
                _ => null,
            };
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            return exception.Message;
        }
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>Whether the station went on with bowlers who take turns: only when a session of theirs is still open.</summary>
    private async Task<bool> GoOnTogetherAsync(Station station, CancellationToken cancellationToken)
    {
        try
        {
            if (lineups?.Find(station.Number) is not { } lineup)
            {
                return false;
            }

            var open = false;
            foreach (var place in lineup.Places)
            {
                open |= await store.FindAsync(place.SessionId, cancellationToken).ConfigureAwait(false) is { Ended: false };
            }

            if (!open)
            {
                return false;
            }

            if (await station.GoOnTogetherAsync(lineup, cancellationToken).ConfigureAwait(false) is not StationReply.Refused refused)
            {
                return true;
            }

            SayNotGoneOn(log, station.Number, string.Join(", ", lineup.Places.AsEnumerable().Select(place => place.SessionId)), refused.Why);
            return false;
        }
        catch (StoreUnavailableException exception)
        {
            SayNotGoneOn(log, station.Number, "of all who took turns", exception.Message);
            return false;
        }
    }

    [LoggerMessage(LogLevel.Warning, "station {Station}: session {SessionId} is left as it is: {Why}")]
    private static partial void SayNotGoneOn(ILogger log, int station, string sessionId, string why);
}
