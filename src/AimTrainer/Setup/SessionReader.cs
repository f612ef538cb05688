using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Puts a stored session's record together.</summary>
internal static class SessionReader
{
    public static async Task<SessionRecord> RecordAsync(ISessionStore store, string sessionId, CancellationToken cancellationToken)
    {
        var builder = new SessionRecordBuilder();
        await foreach (var entry in store.ReadLogAsync(sessionId, cancellationToken).ConfigureAwait(false))
        {
            builder.Add(entry.Events);
        }

        return builder.Result();
    }
}
