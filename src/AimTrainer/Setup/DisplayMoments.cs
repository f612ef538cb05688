using System.Globalization;
using System.Runtime.CompilerServices;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Goes through a stored session as its displays saw it.</summary>
internal static class DisplayMoments
{
    /// <summary>Before and after each shot; with none thrown the session as it waits, and at the end how it ended.</summary>
    /// <exception cref="UserException">This version works the session out otherwise than the one that kept it.</exception>
    public static async IAsyncEnumerable<DisplayMoment> EachShotAsync(ISessionStore store, StoredSession stored, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var (follower, problem) = SessionFollower.Open(stored);
        if (follower is null)
        {
            throw new UserException($"session {stored.Setup.SessionId} cannot be drawn: {problem}");
        }

        yield return new DisplayMoment("shot-000-start", 0, "start", follower.Snapshot, null);
        var shot = 0;
        await foreach (var entry in store.ReadLogAsync(stored.Setup.SessionId, cancellationToken).ConfigureAwait(false))
        {
            var before = follower.Snapshot;
            if (follower.Take(entry) is { } why)
            {
                throw new UserException($"session {stored.Setup.SessionId} cannot be drawn: {why}; use the version of aimtrainer that kept it");
            }

            if (entry.Events.AsEnumerable().OfType<SessionEvent.ShotGraded>().FirstOrDefault() is { } graded)
            {
                shot = graded.Shot.Number;
                yield return new DisplayMoment(string.Create(CultureInfo.InvariantCulture, $"shot-{shot:000}-a-before"), shot, "before", before, null);
                yield return new DisplayMoment(string.Create(CultureInfo.InvariantCulture, $"shot-{shot:000}-b-after"), shot, "after", follower.Snapshot, TimeSpan.Zero);
            }
        }

        yield return new DisplayMoment(string.Create(CultureInfo.InvariantCulture, $"shot-{shot:000}-c-last"), 0, "last", follower.Snapshot, null);
    }
}
