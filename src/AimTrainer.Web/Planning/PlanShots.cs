using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>The shots of stored sessions, for planning.</summary>
internal static class PlanShots
{
    /// <summary>The shots of a session that count, in their order.</summary>
    public static async Task<IReadOnlyList<GradedShot>> ReadAsync(ISessionStore store, string sessionId, CancellationToken cancellationToken)
    {
        var record = new SessionRecordBuilder();
        await foreach (var entry in store.ReadLogAsync(sessionId, cancellationToken).ConfigureAwait(false))
        {
            record.Add(entry.Events);
        }

        return [.. record.Result().Blocks.AsEnumerable().SelectMany(block => block.Shots).Select(shot => shot.Shot).Where(shot => shot.VoidReason is null)];
    }

    /// <summary>What a shot was thrown at, by places: shots of one line are compared with each other, whatever the line is called.</summary>
    public static string Line(GradedShot shot) => string.Join(" to ", shot.Targets.Select(one => $"{one.Target.Centre}@{one.Target.Distance}"));
}
