using AimTrainer.Analysis;
using AimTrainer.Domain;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store.Postgres;

/// <summary>Reports over all centers. They read sums and sessions, no shot: what they cost grows with sessions, not with shots.</summary>
public static class ChainReports
{
    /// <summary>Months after the first that a cohort is followed.</summary>
    public const int MostMonthsLater = 6;

    /// <summary>What a person threw, by center and month. The parameter: the person's id.</summary>
    internal const string AcrossSql =
        """
        SELECT date_trunc('month', sessions.started_at, 'UTC') AS "Month", centers.name AS "Center", count(DISTINCT sessions.key)::int AS "Sessions",
            sum(sums.graded)::bigint AS "Graded", sum(sums.held)::bigint AS "Held", sum(sums.sum_of_sizes) AS "SumOfSizes", sum(sums.sum_of_squares) AS "SumOfSquares"
        FROM chain.bowlers
            JOIN chain.centers ON centers.id = bowlers.center_id
            JOIN chain.sessions ON sessions.bowler_id = bowlers.id AND NOT sessions.simulated
            JOIN chain.sums ON sums.session_key = sessions.key
        WHERE bowlers.id = ANY({0})
        GROUP BY 1, 2
        ORDER BY 1, 2
        """;

    /// <summary>What came of a drill. Parameters: the drill's id, from when, to when.</summary>
    internal const string OutcomeSql =
        """
        WITH tests AS (
            SELECT coalesce(-bowlers.person_id, bowlers.id) AS who, sessions.key, sessions.started_at, sum(sums.sum_of_sizes) / sum(sums.graded) AS miss
            FROM chain.drills
                JOIN chain.sessions ON sessions.drill_hash = drills.hash AND NOT sessions.simulated
                JOIN chain.bowlers ON bowlers.id = sessions.bowler_id
                JOIN chain.sums ON sums.session_key = sessions.key AND sums.kind = 'test'
            WHERE drills.drill_id = {0} AND sessions.started_at >= {1} AND sessions.started_at < {2}
            GROUP BY 1, 2, 3
            HAVING sum(sums.graded) > 0),
        ends AS (
            SELECT who, first_value(miss) OVER times AS first, last_value(miss) OVER times AS last,
                count(*) OVER times AS sessions, row_number() OVER (PARTITION BY who ORDER BY started_at, key) AS number
            FROM tests
            WINDOW times AS (PARTITION BY who ORDER BY started_at, key ROWS BETWEEN UNBOUNDED PRECEDING AND UNBOUNDED FOLLOWING))
        SELECT count(*)::int AS "People", coalesce(sum(sessions), 0)::bigint AS "Sessions", avg(first) AS "First", avg(last) AS "Last",
            stddev_samp(last - first) AS "Deviation", count(*) FILTER (WHERE last < first)::int AS "Better"
        FROM ends WHERE number = 1 AND sessions >= 2
        """;

    /// <summary>In which months the people of each first month came. The parameters: from when, to when.</summary>
    internal const string CohortSql =
        """
        WITH visits AS (
            SELECT coalesce(-bowlers.person_id, bowlers.id) AS who, date_trunc('month', sessions.started_at, 'UTC') AS month
            FROM chain.sessions JOIN chain.bowlers ON bowlers.id = sessions.bowler_id
            WHERE NOT sessions.simulated
            GROUP BY 1, 2),
        firsts AS (SELECT who, min(month) AS cohort FROM visits GROUP BY who)
        SELECT cohort AS "Month",
            ((extract(year FROM month AT TIME ZONE 'UTC') - extract(year FROM cohort AT TIME ZONE 'UTC')) * 12
                + extract(month FROM month AT TIME ZONE 'UTC') - extract(month FROM cohort AT TIME ZONE 'UTC'))::int AS "Later",
            count(*)::int AS "People"
        FROM visits JOIN firsts USING (who)
        WHERE cohort >= {0} AND cohort < {1}
        GROUP BY 1, 2
        ORDER BY 1, 2
        """;

    /// <summary>The bowlers of a person, or of a name at one center; empty when there is none.</summary>
    public static Task<List<long>> BowlersOfAsync(this ChainContext chain, string? center, string name, CancellationToken cancellationToken)
    {
        if (center is null)
        {
            return (from bowler in chain.Bowlers join person in chain.People on bowler.PersonId equals person.Id where person.Name == name select bowler.Id)
                .ToListAsync(cancellationToken);
        }

        var key = NameKey.Of(name);
        return (from bowler in chain.Bowlers join at in chain.Centers on bowler.CenterId equals at.Id where at.Name == center && bowler.Key == key select bowler.Id)
            .ToListAsync(cancellationToken);
    }

    /// <summary>What bowlers threw, by month and center.</summary>
    public static async Task<ValueList<AcrossLine>> AcrossAsync(this ChainContext chain, IReadOnlyList<long> bowlers, CancellationToken cancellationToken) =>
        (await chain.Database.SqlQueryRaw<AcrossRow>(AcrossSql, bowlers.ToArray()).ToListAsync(cancellationToken).ConfigureAwait(false))
        .Select(row => new AcrossLine(
            Utc(row.Month), row.Center, row.Sessions, row.Graded, Share(row.Held, row.Graded), MeanSize(row))).ToValueList();

    /// <summary>What came of a drill in a period.</summary>
    public static async Task<DrillOutcome> OutcomeAsync(
        this ChainContext chain, string drillId, DateTimeOffset from, DateTimeOffset to, CancellationToken cancellationToken)
    {
        var row = (await chain.Database.SqlQueryRaw<OutcomeRow>(OutcomeSql, drillId, from.UtcDateTime, to.UtcDateTime).ToListAsync(cancellationToken).ConfigureAwait(false))[0];
        var change = row.People < DrillOutcome.Fewest
            ? BoundedEstimate.Unknown(FormattableString.Invariant($"{row.People} people threw its test blocks twice; known from {DrillOutcome.Fewest} on"))
            : EstimateLimits.OfMean(row.Last!.Value - row.First!.Value, row.Deviation ?? 0, row.People);
        return new DrillOutcome(drillId, row.People, row.Sessions, row.First, row.Last, change, Share(row.Better, row.People));
    }

    /// <summary>Who came back, by the month of the first session.</summary>
    /// <param name="chain">The chain.</param>
    /// <param name="from">First months from this moment on.</param>
    /// <param name="to">First months before this moment.</param>
    /// <param name="now">Months that are not over then are not known.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    public static async Task<ValueList<CohortLine>> CohortsAsync(
        this ChainContext chain, DateTimeOffset from, DateTimeOffset to, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var rows = await chain.Database.SqlQueryRaw<CohortRow>(CohortSql, from.UtcDateTime, to.UtcDateTime).ToListAsync(cancellationToken).ConfigureAwait(false);
        var lines = new List<CohortLine>();
        foreach (var cohort in rows.GroupBy(row => row.Month))
        {
            var month = Utc(cohort.Key);
            var people = cohort.Single(row => row.Later == 0).People;
            for (var later = 1; later <= MostMonthsLater; later++)
            {
                var returned = cohort.SingleOrDefault(row => row.Later == later)?.People ?? 0;
                lines.Add(month.AddMonths(later + 1) > now
                    ? new CohortLine(month, people, later, null, BoundedEstimate.Unknown("the month is not over"))
                    : new CohortLine(month, people, later, returned, Share(returned, people)));
            }
        }

        return lines.ToValueList();
    }

    internal static DateTimeOffset Utc(DateTime moment) => new(DateTime.SpecifyKind(moment, DateTimeKind.Utc));

    internal static BoundedEstimate Share(long hits, long count)
    {
        if (count == 0)
        {
            return BoundedEstimate.Unknown("nothing to count");
        }

        var limits = ProportionInterval.Wilson((int)hits, (int)count)!.Value;
        return BoundedEstimate.Between((double)hits / count, limits.Low, limits.High);
    }

    private static BoundedEstimate MeanSize(AcrossRow row)
    {
        if (row.Graded == 0)
        {
            return BoundedEstimate.Unknown(EstimateLimits.NoShot);
        }

        var mean = row.SumOfSizes / row.Graded;
        var deviation = row.Graded < 2 ? 0 : Math.Sqrt(Math.Max(0, (row.SumOfSquares - (row.Graded * mean * mean)) / (row.Graded - 1)));
        return EstimateLimits.OfMean(mean, deviation, (int)row.Graded);
    }

    private sealed record AcrossRow(DateTime Month, string Center, int Sessions, long Graded, long Held, double SumOfSizes, double SumOfSquares);

    private sealed record OutcomeRow(int People, long Sessions, double? First, double? Last, double? Deviation, int Better);

    private sealed record CohortRow(DateTime Month, int Later, int People);
}
