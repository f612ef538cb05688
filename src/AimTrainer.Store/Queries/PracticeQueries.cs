using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store;

/// <summary>Questions about a bowler's practice, the same for every database. The database adds up; only the sums are read.</summary>
public static class PracticeQueries
{
    /// <summary>Sessions and sums of a bowler's practice, or null when there is no such bowler.</summary>
    public static async Task<BowlerPractice?> FindPracticeAsync(this RecordContext record, PracticeFilter filter, CancellationToken cancellationToken)
    {
        if (await record.FindScopeAsync(filter, cancellationToken).ConfigureAwait(false) is not { } scope)
        {
            return null;
        }

        var sessions = await record.PracticeSessions(scope).ToListAsync(cancellationToken).ConfigureAwait(false);
        var cutOff = sessions.Count > PracticeLimits.MostSessions;
        if (cutOff)
        {
            sessions.RemoveRange(PracticeLimits.MostSessions, sessions.Count - PracticeLimits.MostSessions);
            scope = scope with { From = sessions[^1].StartedAt };
        }

        var sums = await record.PracticeSums(scope).ToListAsync(cancellationToken).ConfigureAwait(false);
        if (sums.Count > PracticeLimits.MostBlocks)
        {
            cutOff = true;
            sums.RemoveRange(PracticeLimits.MostBlocks, sums.Count - PracticeLimits.MostBlocks);
        }

        var balls = await record.BallsOf(scope.BowlerId, cancellationToken).ConfigureAwait(false);
        var otherHand = await record.OtherHand(scope).CountAsync(cancellationToken).ConfigureAwait(false);
        sessions.Reverse();
        sums.Reverse();
        return new BowlerPractice(
            scope.Bowler, scope.Hand, scope.Simulated, sessions.ToValueList(), sums.Select(sum => sum.ToBlock(balls)).ToValueList(), otherHand, cutOff);
    }

    /// <summary>The newest crossings of a bowler, newest shot first.</summary>
    public static async Task<ValueList<PracticeCrossing>> LastCrossingsAsync(
        this RecordContext record, PracticeFilter filter, int shots, CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(shots, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(shots, PracticeLimits.MostShots);
        if (await record.FindScopeAsync(filter, cancellationToken).ConfigureAwait(false) is not { } scope)
        {
            return [];
        }

        var balls = await record.BallsOf(scope.BowlerId, cancellationToken).ConfigureAwait(false);
        var crossings = await record.NewestCrossings(scope, shots).ToListAsync(cancellationToken).ConfigureAwait(false);
        return crossings.Select(row => row.ToCrossing(balls)).ToValueList();
    }

    /// <summary>Whose practice is asked for: the hand of the newest session; real sessions where there are any.</summary>
    internal static async Task<PracticeScope?> FindScopeAsync(this RecordContext record, PracticeFilter filter, CancellationToken cancellationToken)
    {
        var key = NameKey.Of(filter.Bowler);
        var newest = await (
            from bowler in record.Bowlers.AsNoTracking()
            join session in record.Sessions on bowler.Id equals session.BowlerId
            where bowler.Key == key
            orderby session.Simulated, session.StartedAt descending, session.Key descending
            select new { bowler.Id, bowler.Name, session.Hand, session.Simulated }).FirstOrDefaultAsync(cancellationToken).ConfigureAwait(false);
        return newest is null ? null : new PracticeScope(newest.Id, newest.Name, newest.Hand, newest.Simulated, filter.From, filter.To);
    }

    /// <summary>The sessions, newest first, one more than the limit.</summary>
    internal static IQueryable<PracticeSession> PracticeSessions(this RecordContext record, PracticeScope scope) => (
        from session in record.SessionsOf(scope)
        join drill in record.Drills on session.DrillHash equals drill.Hash
        where session.Hand == scope.Hand
        orderby session.StartedAt descending, session.Key descending
        select new PracticeSession(
            session.Id, session.StartedAt, session.EndedAt != null, drill.DrillId, drill.Name, session.LaneName, session.Shots, session.Points))
        .Take(PracticeLimits.MostSessions + 1);

    /// <summary>What the shots of each run add up to at each target with each ball, newest first, one more than the limit.</summary>
    internal static IQueryable<PracticeSum> PracticeSums(this RecordContext record, PracticeScope scope) => (
        from session in record.SessionsOf(scope)
        join shot in record.GradedShots on session.Key equals shot.SessionKey
        join target in record.ShotTargets on new { shot.SessionKey, shot.Number } equals new { target.SessionKey, target.Number }
        where session.Hand == scope.Hand && shot.VoidReason == null && shot.Simulated == scope.Simulated
        group target by new
        {
            session.StartedAt,
            session.Key,
            session.Id,
            shot.Run,
            shot.BlockName,
            shot.BlockKind,
            shot.BallId,
            target.Name,
            target.DistanceFeet,
        }
        into run
        orderby run.Key.StartedAt descending, run.Key.Key descending, run.Key.Run descending, run.Key.DistanceFeet descending, run.Key.Name descending
        select new PracticeSum
        {
            SessionId = run.Key.Id,
            StartedAt = run.Key.StartedAt,
            Run = run.Key.Run,
            BlockName = run.Key.BlockName,
            Kind = run.Key.BlockKind,
            BallId = run.Key.BallId,
            Target = run.Key.Name,
            DistanceFeet = run.Key.DistanceFeet,
            Shots = run.Count(),
            Graded = run.Count(target => target.MissBoards != null),
            Held = run.Count(target => target.Held == true),
            SumOfMisses = run.Sum(target => target.MissBoards) ?? 0,
            SumOfSizes = run.Sum(target => Math.Abs(target.MissBoards!.Value)),
            SumOfSquares = run.Sum(target => target.MissBoards * target.MissBoards) ?? 0,
            LowestBoard = run.Min(target => target.CrossingBoard),
            HighestBoard = run.Max(target => target.CrossingBoard),
            WholeBoards = run.Count(target => target.CrossingBoard != null && target.CrossingBoard == Math.Round(target.CrossingBoard!.Value)),
        }).Take(PracticeLimits.MostBlocks + 1);

    /// <summary>The targets of the newest shots, newest shot first.</summary>
    internal static IQueryable<PracticeCrossingRow> NewestCrossings(this RecordContext record, PracticeScope scope, int shots) =>
        from shot in (
            from session in record.SessionsOf(scope)
            join shot in record.GradedShots on session.Key equals shot.SessionKey
            where session.Hand == scope.Hand && shot.VoidReason == null && shot.Simulated == scope.Simulated
            orderby session.StartedAt descending, session.Key descending, shot.Number descending
            select new { session.Id, session.StartedAt, Shot = shot }).Take(shots)
        join target in record.ShotTargets on new { shot.Shot.SessionKey, shot.Shot.Number } equals new { target.SessionKey, target.Number }
        orderby shot.StartedAt descending, shot.Shot.SessionKey descending, shot.Shot.Number descending, target.Position
        select new PracticeCrossingRow
        {
            SessionId = shot.Id,
            Number = shot.Shot.Number,
            At = shot.Shot.At,
            Run = shot.Shot.Run,
            Kind = shot.Shot.BlockKind,
            BallId = shot.Shot.BallId,
            Target = target.Name,
            DistanceFeet = target.DistanceFeet,
            CentreBoard = target.CentreBoard,
            WidthBoards = target.WidthBoards,
            Crossing = target.Crossing,
            CrossingBoard = target.CrossingBoard,
            MissBoards = target.MissBoards,
            Held = target.Held,
            LaydownBoard = shot.Shot.LaydownBoard,
            LaunchAngleDegrees = shot.Shot.LaunchAngleDegrees,
            SpeedMph = shot.Shot.SpeedMph,
            RevsRpm = shot.Shot.RevsRpm,
            SpeedAt = shot.Shot.SpeedAt,
        };

    private static IQueryable<SessionRow> OtherHand(this RecordContext record, PracticeScope scope) =>
        record.SessionsOf(scope).Where(session => session.Hand != scope.Hand);

    private static IQueryable<SessionRow> SessionsOf(this RecordContext record, PracticeScope scope)
    {
        var sessions = record.Sessions.AsNoTracking().Where(session => session.BowlerId == scope.BowlerId && session.Simulated == scope.Simulated);
        if (scope.From is { } from)
        {
            sessions = sessions.Where(session => session.StartedAt >= from);
        }

        return scope.To is { } to ? sessions.Where(session => session.StartedAt < to) : sessions;
    }

    private static Task<Dictionary<long, string>> BallsOf(this RecordContext record, long bowlerId, CancellationToken cancellationToken) =>
        record.Balls.AsNoTracking().Where(ball => ball.BowlerId == bowlerId).ToDictionaryAsync(ball => ball.Id, ball => ball.Name, cancellationToken);
}
