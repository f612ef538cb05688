using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What every store can do by its port alone.</summary>
public static class SessionStoreReading
{
    /// <summary>All steps of a session, in order.</summary>
    public static IAsyncEnumerable<LogEntry> ReadLogAsync(this ISessionStore store, string sessionId, CancellationToken cancellationToken) =>
        store.ReadLogAsync(sessionId, 0, cancellationToken);

    /// <summary>The step that took a shot, by the shot's id; null when there is none (an equal shot of another id may have been taken).</summary>
    public static Task<LogEntry?> FindShotAsync(this ISessionStore store, string sessionId, string shotId, CancellationToken cancellationToken) =>
        FirstAsync(store, sessionId, input => input is SessionInput.ShotThrown { Shot.Id: { } known } && known == shotId, cancellationToken);

    /// <summary>The step that a coach's action led to, by the action's id; null when there is none.</summary>
    public static Task<LogEntry?> FindActionAsync(this ISessionStore store, string sessionId, string actionId, CancellationToken cancellationToken) =>
        FirstAsync(store, sessionId, input => input is not SessionInput.ShotThrown && input.ActionId == actionId, cancellationToken);

    private static async Task<LogEntry?> FirstAsync(ISessionStore store, string sessionId, Func<SessionInput, bool> isIt, CancellationToken cancellationToken)
    {
        await foreach (var entry in store.ReadLogAsync(sessionId, cancellationToken).ConfigureAwait(false))
        {
            if (isIt(entry.Input))
            {
                return entry;
            }
        }

        return null;
    }
}
