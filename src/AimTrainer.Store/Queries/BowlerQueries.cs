using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store;

/// <summary>Questions about bowlers, the same for every database.</summary>
public static class BowlerQueries
{
    /// <summary>How many of a bowler's newest shots make the usual throw.</summary>
    public const int ShotsLookedAt = 200;

    /// <summary>Fewest measured values from which a usual one is told.</summary>
    public const int FewestMeasured = 5;

    /// <summary>
    /// What the record knows of a bowler, or null. The usual throw is worked out from the newest <see cref="ShotsLookedAt"/>
    /// shots that count, are not simulated, and were thrown with the hand of the newest session: boards of the other hand count
    /// from the other edge.
    /// </summary>
    public static async Task<BowlerRecord?> FindBowlerAsync(this RecordContext record, string name, CancellationToken cancellationToken)
    {
        var key = NameKey.Of(name);
        var newest = await (
            from bowler in record.Bowlers.AsNoTracking()
            join session in record.Sessions on bowler.Id equals session.BowlerId
            where bowler.Key == key
            orderby session.Simulated, session.StartedAt descending, session.Key descending
            select new { bowler.Id, bowler.Name, session.Hand }).FirstOrDefaultAsync(cancellationToken).ConfigureAwait(false);
        if (newest is null)
        {
            return null;
        }

        var shots = await record.CountingShots(newest.Id, newest.Hand).ToListAsync(cancellationToken).ConfigureAwait(false);
        return new BowlerRecord(newest.Name, newest.Hand, UsualThrow.BaselineOf(shots), UsualThrow.BreakpointOf(shots));
    }

    /// <summary>All bowlers, those who threw last first.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one is asked for.</exception>
    public static async Task<ValueList<BowlerListing>> ListBowlersAsync(this RecordContext record, int most, CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        var bowlers = await (
            from session in record.Sessions.AsNoTracking()
            group session by session.BowlerId into sessions
            orderby sessions.Max(session => session.StartedAt) descending, sessions.Key
            select new
            {
                BowlerId = sessions.Key,
                Sessions = sessions.Count(),
                Shots = sessions.Sum(session => session.Shots),
                LastAt = sessions.Max(session => session.StartedAt),
                OnlySimulated = sessions.Min(session => session.Simulated ? 1 : 0) == 1,
            }).Take(most).ToListAsync(cancellationToken).ConfigureAwait(false);
        var ids = bowlers.ConvertAll(bowler => bowler.BowlerId);
        var names = await record.Bowlers.AsNoTracking().Where(bowler => ids.Contains(bowler.Id)).ToDictionaryAsync(bowler => bowler.Id, cancellationToken).ConfigureAwait(false);
        var balls = (await record.Balls.AsNoTracking().Where(ball => ids.Contains(ball.BowlerId)).OrderBy(ball => ball.Name).ToListAsync(cancellationToken)
            .ConfigureAwait(false)).ToLookup(ball => ball.BowlerId, ball => ball.Name);
        var hands = (await (
            from session in record.Sessions.AsNoTracking()
            where ids.Contains(session.BowlerId)
            group session by session.BowlerId into sessions
            select sessions.OrderByDescending(session => session.StartedAt).ThenByDescending(session => session.Key)
                .Select(session => new { session.BowlerId, session.Hand }).First()).ToListAsync(cancellationToken).ConfigureAwait(false))
            .ToDictionary(session => session.BowlerId, session => session.Hand);
        return bowlers.Select(bowler => new BowlerListing(
            names[bowler.BowlerId].Name, hands[bowler.BowlerId], bowler.Sessions, bowler.Shots, bowler.LastAt, bowler.OnlySimulated,
            balls[bowler.BowlerId].ToValueList())).ToValueList();
    }

    /// <summary>The newest shots of a bowler that make the usual throw: by session, then by number, newest first.</summary>
    public static IQueryable<GradedShotRow> CountingShots(this RecordContext record, long bowlerId, Hand hand) => (
        from session in record.Sessions.AsNoTracking()
        join shot in record.GradedShots.AsNoTracking() on session.Key equals shot.SessionKey
        where session.BowlerId == bowlerId && session.Hand == hand && !shot.Simulated && shot.VoidReason == null
        orderby session.StartedAt descending, session.Key descending, shot.Number descending
        select shot).Take(ShotsLookedAt);
}
