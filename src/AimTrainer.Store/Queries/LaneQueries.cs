using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store;

/// <summary>What a display asks that follows a lane in the record.</summary>
public static class LaneQueries
{
    /// <summary>How far the logs of some sessions have come, in no order; sessions that are not there are left out. Costs little.</summary>
    public static Task<List<SessionProgress>> ProgressOfAsync(this RecordContext record, IReadOnlyCollection<string> sessionIds, CancellationToken cancellationToken) => (
        from session in record.Sessions.AsNoTracking()
        where sessionIds.Contains(session.Id)
        select new SessionProgress(
            session.Id,
            session.EndedAt != null,
            record.LogSteps.Where(step => step.SessionKey == session.Key).Max(step => (long?)step.Sequence) ?? 0)).ToListAsync(cancellationToken);
}
