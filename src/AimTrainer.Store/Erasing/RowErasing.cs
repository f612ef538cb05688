using System.Globalization;
using AimTrainer.Domain;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store;

/// <summary>Takes rows out of the record for good, the same for every database. The only thing that ever takes something out of a log.</summary>
internal static class RowErasing
{
    private const int AtOnce = 100;

    /// <summary>
    /// A session that is not over is open on its lane, until the lane has gone on to another so long after the last step: a session that
    /// could not be gone on with is never ended, and would otherwise keep a person in the record for ever. Common practice.
    /// </summary>
    private static readonly TimeSpan LeftAfter = TimeSpan.FromDays(1);

    /// <summary>Does it in the transaction that the context is in.</summary>
    public static ErasedRows Erase(RecordContext record, ErasureScope scope) => scope switch
    {
        ErasureScope.OfBowler bowler => OfBowler(record, bowler.Name),
        ErasureScope.Before before => Before(record, before.At),
        ErasureScope.Sessions sessions => OfIds(record, sessions.Ids, evenIfOpen: false),
        ErasureScope.Again again => OfIds(record, again.Ids, evenIfOpen: true),
        _ => throw new ArgumentException($"unknown scope {scope.GetType().Name}", nameof(scope)),
    };

    private static ErasedRows OfBowler(RecordContext record, string name)
    {
        var key = NameKey.Of(name);
        if (record.Bowlers.Where(bowler => bowler.Key == key).Select(bowler => (long?)bowler.Id).SingleOrDefault() is not { } id)
        {
            return ErasedRows.None;
        }

        var sessions = Found(record.Sessions.Where(session => session.BowlerId == id));
        if (sessions.Find(session => IsOpen(record, session)) is { } open)
        {
            return new ErasedRows(false, [], string.Create(
                CultureInfo.InvariantCulture,
                $"a session of this bowler is open on lane {open.Station}: end it first, on the lane's page or with aimtrainer run --go-on --station {open.Station}"));
        }

        Delete(record, typeof(BowlerRow), "id", [id]);
        return new ErasedRows(true, sessions.Select(session => session.Id).ToValueList());
    }

    private static ErasedRows Before(RecordContext record, DateTimeOffset at)
    {
        var sessions = Found(record.Sessions.Where(session => session.StartedAt < at));
        sessions.RemoveAll(session => IsOpen(record, session));
        Delete(record, sessions);
        return new ErasedRows(sessions.Count > 0, sessions.Select(session => session.Id).ToValueList());
    }

    private static ErasedRows OfIds(RecordContext record, ValueList<string> ids, bool evenIfOpen)
    {
        var sessions = ids.Chunk(AtOnce).SelectMany(some => Found(record.Sessions.Where(session => some.AsEnumerable().Contains(session.Id)))).ToList();
        var open = evenIfOpen ? [] : sessions.Where(session => IsOpen(record, session)).Select(session => session.Id).ToHashSet(StringComparer.Ordinal);
        sessions.RemoveAll(session => open.Contains(session.Id));
        Delete(record, sessions);
        var gone = ids.AsEnumerable().Where(id => !open.Contains(id)).ToValueList();
        return new ErasedRows(gone.Count > 0, gone);
    }

    private static List<FoundSession> Found(IQueryable<SessionRow> sessions) =>
        [.. sessions.OrderBy(session => session.StartedAt).ThenBy(session => session.Key)
            .Select(session => new FoundSession(session.Key, session.Id, session.BowlerId, session.Station, session.StartedAt, session.EndedAt != null))];

    private static bool IsOpen(RecordContext record, FoundSession session)
    {
        if (session.Ended)
        {
            return false;
        }

        var last = record.LogSteps.Where(step => step.SessionKey == session.Key).OrderByDescending(step => step.Sequence)
            .Select(step => (DateTimeOffset?)step.At).FirstOrDefault();
        var left = (last is { } at && at > session.StartedAt ? at : session.StartedAt) + LeftAfter;
        return !record.Sessions.Any(other => other.Station == session.Station && other.StartedAt > left);
    }

    private static void Delete(RecordContext record, List<FoundSession> sessions)
    {
        Delete(record, typeof(SessionRow), "key", sessions.ConvertAll(session => session.Key));
        var bowlers = sessions.Select(session => session.BowlerId).Distinct().ToList();
        var left = bowlers.Chunk(AtOnce).SelectMany(some => record.Sessions.Where(session => some.AsEnumerable().Contains(session.BowlerId)).Select(session => session.BowlerId).Distinct().ToList())
            .ToHashSet();
        bowlers.RemoveAll(left.Contains);
        Delete(record, typeof(BowlerRow), "id", bowlers);
    }

    private static void Delete(RecordContext record, Type root, string column, IReadOnlyCollection<long> numbers)
    {
        foreach (var some in numbers.Chunk(AtOnce))
        {
            // Numbers that the database gave, so they may stand in the statement.
            var which = $"\"{column}\" IN ({string.Join(", ", some.Select(number => number.ToString(CultureInfo.InvariantCulture)))})";
            foreach (var statement in ErasureStatements.For(record, root, which))
            {
                record.Database.ExecuteSqlRaw(statement);
            }
        }
    }

    private sealed record FoundSession(long Key, string Id, long BowlerId, int Station, DateTimeOffset StartedAt, bool Ended);
}
