using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>Reads a session's figures from the record, over or under way.</summary>
public static class SessionFiguresReader
{
    /// <summary>The figures of a session, or null when there is no such session.</summary>
    /// <param name="store">The record.</param>
    /// <param name="sessionId">Which session.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public static async Task<SessionFigures?> ReadAsync(ISessionStore store, string sessionId, CancellationToken cancellationToken)
    {
        if (await store.FindAsync(sessionId, cancellationToken).ConfigureAwait(false) is not { } stored)
        {
            return null;
        }

        var record = new SessionRecordBuilder();
        await foreach (var entry in store.ReadLogAsync(sessionId, cancellationToken).ConfigureAwait(false))
        {
            record.Add(entry.Events);
        }

        return SessionFigures.Of(stored.Setup, record.Result());
    }
}
