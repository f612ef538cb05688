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
            foreach (var happened in entry.Events)
            {
                builder.Add(happened);
            }
        }

        return builder.Result();
    }
}
