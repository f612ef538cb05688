using AimTrainer.Domain;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store;

/// <summary>Questions about what a center has to send, the same for every database.</summary>
public static class OutboxQueries
{
    /// <summary>The sessions after a key, in the order in which they were made.</summary>
    public static Task<List<SessionPosition>> PositionsAsync(this RecordContext record, long afterKey, int most, CancellationToken cancellationToken) =>
        record.Positions(record.Sessions.Where(session => session.Key > afterKey)).Take(most).ToListAsync(cancellationToken);

    /// <summary>The sessions of some ids.</summary>
    public static Task<List<SessionPosition>> PositionsOfAsync(this RecordContext record, IReadOnlyCollection<string> ids, CancellationToken cancellationToken) =>
        record.Positions(record.Sessions.Where(session => ids.Contains(session.Id))).ToListAsync(cancellationToken);

    /// <summary>A session's next steps, with its setup and drill when the first is among them; null when there is no such session.</summary>
    /// <param name="record">The record.</param>
    /// <param name="sessionId">The session.</param>
    /// <param name="after">Only steps with a higher sequence.</param>
    /// <param name="most">At most so many.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public static async Task<DeliveredSession?> ToDeliverAsync(this RecordContext record, string sessionId, long after, int most, CancellationToken cancellationToken)
    {
        var found = await (
            from session in record.Sessions.AsNoTracking()
            join drill in record.Drills on session.DrillHash equals drill.Hash
            where session.Id == sessionId
            select new { session.Key, session.SetupJson, Drill = drill }).SingleOrDefaultAsync(cancellationToken).ConfigureAwait(false);
        if (found is null)
        {
            return null;
        }

        var steps = await record.LogSteps.AsNoTracking().Where(step => step.SessionKey == found.Key && step.Sequence > after)
            .OrderBy(step => step.Sequence).Take(most).ToListAsync(cancellationToken).ConfigureAwait(false);
        return new DeliveredSession(
            sessionId,
            after == 0 ? found.SetupJson : null,
            after == 0 ? new DeliveredDrill(found.Drill.Hash, found.Drill.DrillId, found.Drill.Name, found.Drill.Json) : null,
            steps.Select(step => new DeliveredStep(step.Sequence, step.At, step.InputJson, step.EventsJson)).ToValueList());
    }

    /// <summary>When the input of a step came in; null when there is no such step.</summary>
    public static Task<DateTimeOffset?> WhenAsync(this RecordContext record, string sessionId, long sequence, CancellationToken cancellationToken) =>
        record.Steps(sessionId).Where(step => step.Sequence == sequence).Select(step => (DateTimeOffset?)step.At).FirstOrDefaultAsync(cancellationToken);

    private static IQueryable<SessionPosition> Positions(this RecordContext record, IQueryable<SessionRow> sessions) =>
        from session in sessions.AsNoTracking()
        orderby session.Key
        select new SessionPosition(
            session.Key, session.Id, session.StartedAt, session.EndedAt != null,
            record.LogSteps.Where(step => step.SessionKey == session.Key).Max(step => (long?)step.Sequence) ?? 0);
}
