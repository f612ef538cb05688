using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store;

/// <summary>Questions about sessions, the same for every database.</summary>
public static class SessionQueries
{
    /// <summary>The sessions of a filter, newest first.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The limit is below 1.</exception>
    public static IQueryable<SessionListing> Listing(this RecordContext record, SessionFilter filter)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(filter.Limit, 1, nameof(filter));
        var sessions = record.Sessions.AsNoTracking();
        if (filter.Station is { } station)
        {
            sessions = sessions.Where(session => session.Station == station);
        }

        if (filter.Ended is { } ended)
        {
            sessions = sessions.Where(session => (session.EndedAt != null) == ended);
        }

        var bowlers = record.Bowlers.AsNoTracking();
        if (filter.Bowler is { } name)
        {
            var key = NameKey.Of(name);
            bowlers = bowlers.Where(bowler => bowler.Key == key);
        }

        var listing =
            from session in sessions
            join bowler in bowlers on session.BowlerId equals bowler.Id
            join drill in record.Drills on session.DrillHash equals drill.Hash
            orderby session.StartedAt descending, session.Key descending
            select new SessionListing(
                session.Id, session.StartedAt, session.Station, bowler.Name, drill.DrillId, drill.Name, session.Shots, session.Points,
                session.EndedAt != null, session.Simulated);
        return listing.Take(filter.Limit);
    }

    /// <summary>A session by its id, or null.</summary>
    public static async Task<StoredSession?> FindSessionAsync(this RecordContext record, string sessionId, CancellationToken cancellationToken)
    {
        var found = await (
            from session in record.Sessions.AsNoTracking()
            join drill in record.Drills on session.DrillHash equals drill.Hash
            where session.Id == sessionId
            select new { session.SetupJson, drill.Json, Ended = session.EndedAt != null }).SingleOrDefaultAsync(cancellationToken)
            .ConfigureAwait(false);
        return found is null ? null : new StoredSession(Read<SessionSetup>(found.SetupJson), found.Json, found.Ended);
    }

    /// <summary>The lanes that sessions were thrown on, by session.</summary>
    public static async Task<IReadOnlyDictionary<string, LaneProfile>> FindLanesAsync(
        this RecordContext record, IReadOnlyCollection<string> sessionIds, CancellationToken cancellationToken)
    {
        var found = await record.Sessions.AsNoTracking().Where(session => sessionIds.Contains(session.Id)).Select(session => new { session.Id, session.SetupJson })
            .ToListAsync(cancellationToken).ConfigureAwait(false);
        return found.ToDictionary(session => session.Id, session => Read<SessionSetup>(session.SetupJson).Lane, StringComparer.Ordinal);
    }

    /// <summary>The newest session of a station and how far its log has come, or null when the station has had none.</summary>
    public static Task<SessionProgress?> NewestOfStationAsync(this RecordContext record, int station, CancellationToken cancellationToken) => (
        from session in record.Sessions.AsNoTracking()
        where session.Station == station
        orderby session.StartedAt descending, session.Key descending
        select new SessionProgress(
            session.Id,
            session.EndedAt != null,
            record.LogSteps.Where(step => step.SessionKey == session.Key).Max(step => (long?)step.Sequence) ?? 0)).FirstOrDefaultAsync(cancellationToken);

    /// <summary>The steps of a session, in order, read as they are asked for.</summary>
    public static IQueryable<LogStepRow> Steps(this RecordContext record, string sessionId) =>
        from step in record.LogSteps.AsNoTracking()
        join session in record.Sessions on step.SessionKey equals session.Key
        where session.Id == sessionId
        orderby step.Sequence
        select step;

    /// <summary>A step as it was given to the store.</summary>
    /// <exception cref="JsonException">The text is not what the store wrote.</exception>
    public static LogEntry ToEntry(this LogStepRow step) =>
        new(step.Sequence, Read<SessionInput>(step.InputJson), Read<ValueList<SessionEvent>>(step.EventsJson));

    private static T Read<T>(string json) =>
        JsonSerializer.Deserialize<T>(json, DomainJson.Options) ?? throw new JsonException($"null where a {typeof(T).Name} was expected");
}
