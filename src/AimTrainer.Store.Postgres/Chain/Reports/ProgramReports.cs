using AimTrainer.Analysis;
using AimTrainer.Domain;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store.Postgres;

/// <summary>What came of programs over all centers. Which session counts for which plan is worked out as a center's own pages do it.</summary>
public static class ProgramReports
{
    /// <summary>Who is in the groups of a program. Parameters: the program, from which first day on, before which.</summary>
    internal const string MembersSql =
        """
        SELECT coalesce(-bowlers.person_id, bowlers.id) AS "Who", groups.center_id AS "CenterId", groups.id AS "GroupId", groups.starts AS "Starts", enrolments.level AS "Level"
        FROM chain.groups
            JOIN chain.enrolments ON enrolments.center_id = groups.center_id AND enrolments.group_id = groups.id AND enrolments.group_starts = groups.starts
            JOIN chain.bowlers ON bowlers.id = enrolments.bowler_id
        WHERE groups.program_id = {0} AND groups.starts >= {1} AND groups.starts < {2}
        """;

    /// <summary>What these people threw from the first day on, at any center, with the sums of its test blocks. Parameters as above.</summary>
    internal const string SessionsSql =
        """
        WITH enrolled AS (
            SELECT bowlers.id, bowlers.person_id
            FROM chain.groups
                JOIN chain.enrolments ON enrolments.center_id = groups.center_id AND enrolments.group_id = groups.id AND enrolments.group_starts = groups.starts
                JOIN chain.bowlers ON bowlers.id = enrolments.bowler_id
            WHERE groups.program_id = {0} AND groups.starts >= {1} AND groups.starts < {2}),
        everywhere AS (
            SELECT id, person_id FROM enrolled
            UNION
            SELECT bowlers.id, bowlers.person_id FROM chain.bowlers JOIN enrolled ON bowlers.person_id = enrolled.person_id)
        SELECT coalesce(-everywhere.person_id, everywhere.id) AS "Who", sessions.key AS "Key", drills.drill_id AS "DrillId", sessions.started_at AS "StartedAt",
            sessions.ended_at IS NOT NULL AS "Ended", coalesce(sum(sums.shots), 0)::int AS "Shots", coalesce(sum(sums.graded), 0)::int AS "Graded",
            coalesce(sum(sums.held), 0)::int AS "Held", coalesce(sum(sums.sum_of_sizes), 0) AS "SumOfSizes"
        FROM everywhere
            JOIN chain.sessions ON sessions.bowler_id = everywhere.id AND NOT sessions.simulated AND sessions.started_at >= {1}::date::timestamp AT TIME ZONE 'UTC'
            JOIN chain.drills ON drills.hash = sessions.drill_hash
            LEFT JOIN chain.sums ON sums.session_key = sessions.key AND sums.kind = 'test'
        GROUP BY 1, 2, 3, 4, 5
        """;

    /// <summary>What came of a program for the groups that began it in a period.</summary>
    /// <param name="chain">The chain.</param>
    /// <param name="programId">The program.</param>
    /// <param name="since">Groups that began on this day or later.</param>
    /// <param name="before">Groups that began before this day.</param>
    /// <param name="today">Today, UTC: what is still open is not missed.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    public static async Task<ProgramOutcome> ProgramOutcomeAsync(
        this ChainContext chain, string programId, DateOnly since, DateOnly before, DateOnly today, CancellationToken cancellationToken)
    {
        var groups = await chain.Groups.AsNoTracking().Where(group => group.ProgramId == programId && group.Starts >= since && group.Starts < before)
            .ToListAsync(cancellationToken).ConfigureAwait(false);
        var members = (await chain.Database.SqlQueryRaw<Member>(MembersSql, programId, since, before).ToListAsync(cancellationToken).ConfigureAwait(false))
            .OrderBy(member => member.Starts).ThenBy(member => (member.CenterId, member.GroupId), Comparer<(int, string)>.Default).DistinctBy(member => member.Who).ToList();
        var sessions = (await chain.Database.SqlQueryRaw<Session>(SessionsSql, programId, since, before).ToListAsync(cancellationToken).ConfigureAwait(false)).ToLookup(session => session.Who);
        var programs = groups.Select(group => group.ProgramJson).Distinct().ToDictionary(json => json, ChainGroups.Program);
        var plans = groups.ToDictionary(group => (group.CenterId, group.Id, group.Starts), group => programs[group.ProgramJson]);
        var people = members.ConvertAll(member =>
        {
            var thrown = sessions[member.Who].ToList();
            var progress = ProgramProgress.Of(
                plans[(member.CenterId, member.GroupId, member.Starts)], member.Starts, member.Level,
                thrown.Select(one => new ThrownDrill(IdOf(one), one.DrillId, ChainReports.Utc(one.StartedAt), one.Ended)), thrown.Where(one => one.Graded > 0).Select(Tests), today);
            return (Progress: progress, Change: ChangeOf(progress, thrown));
        });
        var planned = people.SelectMany(person => person.Progress.Sessions.AsEnumerable()).ToList();
        var goals = planned.Where(session => session.SessionIds.Count > 0).SelectMany(session => session.Goals.AsEnumerable()).CountBy(goal => goal.Standing).ToDictionary();
        var shares = people.Where(person => person.Progress.Done + person.Progress.Missed > 0)
            .Select(person => (double)person.Progress.Done / (person.Progress.Done + person.Progress.Missed)).ToList();
        var changes = people.Select(person => person.Change).OfType<(double First, double Last)>().ToList();
        return new ProgramOutcome(
            programId, groups.Count, groups.Sum(group => group.Members), people.Count,
            Count(SessionStanding.Done), Count(SessionStanding.MadeUp), Count(SessionStanding.Missed), Count(SessionStanding.Open) + Count(SessionStanding.ToCome),
            people.Count(person => person.Progress.IsComplete), ShareOf(shares),
            goals.GetValueOrDefault(GoalStanding.Reached), goals.GetValueOrDefault(GoalStanding.NotYet), goals.GetValueOrDefault(GoalStanding.CannotTell), goals.GetValueOrDefault(GoalStanding.NotKnown),
            changes.Count, changes.Count == 0 ? null : changes.Average(change => change.First), changes.Count == 0 ? null : changes.Average(change => change.Last),
            MeanOf(changes.ConvertAll(change => change.Last - change.First), "people threw two of its retention tests with the same drill"),
            ChainReports.Share(changes.Count(change => change.Last < change.First), changes.Count));

        int Count(SessionStanding standing) => planned.Count(session => session.Standing == standing);
    }

    /// <summary>The first retention test against the last with the same drill. The test is what the session begins with; drills after it are practice.</summary>
    private static (double First, double Last)? ChangeOf(ProgramProgress progress, List<Session> thrown)
    {
        var known = thrown.Where(one => one.Graded > 0).ToDictionary(IdOf);
        var tests = progress.Sessions.AsEnumerable().Where(session => session.Session.IsRetentionTest && session.SessionIds.Count > 0)
            .Select(session => known.GetValueOrDefault(session.SessionIds[0])).OfType<Session>().OrderBy(session => session.StartedAt).ToList();
        return tests.Count > 0 && tests.FindLast(test => test.DrillId == tests[0].DrillId) is { } last && last != tests[0] ? (tests[0].Miss(), last.Miss()) : null;
    }

    /// <summary>A share's limits by Student's t may reach beyond none and all, where no share is.</summary>
    private static BoundedEstimate ShareOf(List<double> shares)
    {
        var mean = MeanOf(shares, "people had a session that is over");
        return mean.Low is { } low && mean.High is { } high ? mean with { Low = Math.Max(0, low), High = Math.Min(1, high) } : mean;
    }

    private static BoundedEstimate MeanOf(List<double> values, string who)
    {
        if (values.Count < DrillOutcome.Fewest)
        {
            return BoundedEstimate.Unknown(FormattableString.Invariant($"{values.Count} {who}; known from {DrillOutcome.Fewest} on"));
        }

        var mean = values.Average();
        return EstimateLimits.OfMean(mean, Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1)), values.Count);
    }

    private static string IdOf(Session session) => session.Key.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static PracticeBlock Tests(Session one) => new(
        IdOf(one), ChainReports.Utc(one.StartedAt), 0, null, BlockKind.Test, null, "", 0, one.Shots, one.Graded, one.Held, 0, one.SumOfSizes, 0, null, null, 0);

    private sealed record Member(long Who, int CenterId, string GroupId, DateOnly Starts, string Level);

    private sealed record Session(long Who, long Key, string DrillId, DateTime StartedAt, bool Ended, int Shots, int Graded, int Held, double SumOfSizes)
    {
        public double Miss() => SumOfSizes / Graded;
    }
}
