using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What every store can do by its port alone.</summary>
public static class SessionStoreReading
{
    /// <summary>All steps of a session, in order.</summary>
    public static IAsyncEnumerable<LogEntry> ReadLogAsync(this ISessionStore store, string sessionId, CancellationToken cancellationToken) =>
        store.ReadLogAsync(sessionId, 0, cancellationToken);
}
