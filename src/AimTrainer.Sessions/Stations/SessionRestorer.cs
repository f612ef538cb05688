namespace AimTrainer.Sessions;

/// <summary>Puts an interrupted session together again, to be gone on with.</summary>
internal static class SessionRestorer
{
    public static async Task<RestoredSession> RestoreAsync(StoredSession stored, ISessionStore store, CancellationToken cancellationToken)
    {
        var id = stored.Setup.SessionId;
        var (follower, problem) = SessionFollower.Open(stored);
        if (follower is null)
        {
            return new RestoredSession(null, $"session {id} cannot go on: {problem}; its record stays as it is");
        }

        await foreach (var entry in store.ReadLogAsync(id, cancellationToken).ConfigureAwait(false))
        {
            if (follower.Take(entry) is { } why)
            {
                return new RestoredSession(null, $"session {id} cannot go on: {why}; its record stays as it is, start a new session");
            }
        }

        return new RestoredSession(follower.Session, null);
    }
}
