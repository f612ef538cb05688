using System.Diagnostics;
using System.Globalization;
using AimTrainer.Store.Postgres;
using AimTrainer.Store.Tests;
using Npgsql;

namespace AimTrainer.Benchmarks;

/// <summary>
/// The plans of a chain's queries over real rows: 200 centers, two years, 60 shots a session, in parts by month. Prints how long each
/// took and the server's own plan (docs/chain.md). Not among all: it takes minutes and gigabytes.
/// </summary>
internal static class ChainPlansBenchmark
{
    private const int ShotsASession = 60;

    public static async Task RunAsync(int rows)
    {
        using var server = new PostgresServer();
        var place = server.Place("plans");
        PostgresChain.Open(place, TimeProvider.System).Dispose();
        using var connection = server.Connect("plans");
        var from = Stopwatch.GetTimestamp();
        await FillAsync(connection, rows);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"chain plans: {rows} crossings made in {Stopwatch.GetElapsedTime(from).TotalSeconds:0} s"));
        foreach (var table in (string[])["sessions", "sums", "crossings", "log_steps"])
        {
            Console.WriteLine(await TextAsync(
                connection,
                $"""
                SELECT '{table}: ' || (SELECT count(*) FROM chain.{table}) || ' rows, ' || pg_size_pretty(pg_total_relation_size('chain.{table}')
                    + coalesce((SELECT sum(pg_total_relation_size(relid)) FROM pg_partition_tree('chain.{table}') WHERE isleaf AND level > 0), 0)) || ' with indexes'
                """));
        }

        await PlanAsync(connection, "a bowler across centers (report bowler)", Filled(ChainReports.AcrossSql, "ARRAY[77, 7777]::bigint[]"));
        await PlanAsync(connection, "what came of a drill (report outcomes)", Filled(ChainReports.OutcomeSql, "'drill 3'", "'2025-01-01'::timestamptz", "'2025-07-01'::timestamptz"));
        await PlanAsync(connection, "who came back (report cohorts)", Filled(ChainReports.CohortSql, "'2024-01-01'::timestamptz", "'2026-01-01'::timestamptz"));
        const string Session = "SELECT key, started_at FROM chain.sessions WHERE center_id = 8 AND id = 's7007'";
        var (key, started) = await PlaceAsync(connection, Session);
        await PlanAsync(connection, "how far a session is (each delivery)", Session);
        await PlanAsync(
            connection, "steps that came again (each repeated delivery)",
            $"SELECT sequence, input_json, events_json FROM chain.log_steps WHERE started_at = '{started}' AND session_key = {key} AND sequence BETWEEN 1 AND 20");
        await PlanAsync(
            connection, "a session added up (each delivery)",
            $"SELECT run, name, count(*), sum(abs(miss_boards)) FROM chain.crossings WHERE started_at = '{started}' AND session_key = {key} AND counts GROUP BY 1, 2");
        await PlanAsync(
            connection, "one month of crossings of the whole chain (no report asks this)",
            "SELECT name, count(*), avg(abs(miss_boards)) FROM chain.crossings WHERE started_at >= '2025-03-01 00:00Z' AND started_at < '2025-04-01 00:00Z' AND counts GROUP BY 1");
    }

    private static async Task FillAsync(NpgsqlConnection connection, int rows)
    {
        var sessions = rows / ShotsASession;
        var months = string.Join('\n', Enumerable.Range(0, 24).SelectMany(month =>
        {
            var first = new DateTime(2024, 1, 1).AddMonths(month);
            return new[] { "log_steps", "crossings" }.Select(table => string.Create(
                CultureInfo.InvariantCulture,
                $"CREATE TABLE chain.{table}_{first:yyyy_MM} PARTITION OF chain.{table} FOR VALUES FROM ('{first:yyyy-MM-dd} 00:00:00+00') TO ('{first.AddMonths(1):yyyy-MM-dd} 00:00:00+00');"));
        }));
        foreach (var sql in (string[])
            [
                months,
                "INSERT INTO chain.centers (name, token_hash, added_at) SELECT 'center ' || n, 'hash ' || n, now() FROM generate_series(1, 200) n",
                "INSERT INTO chain.people (name) SELECT 'person ' || n FROM generate_series(1, 5000) n",
                "INSERT INTO chain.bowlers (center_id, name, key, person_id) SELECT 1 + n % 200, 'bowler ' || n, 'BOWLER ' || n, CASE WHEN n % 4 = 0 THEN 1 + n % 5000 END FROM generate_series(1, 20000) n",
                "INSERT INTO chain.drills (hash, drill_id, name, json) SELECT 'hash ' || n, 'drill ' || n, 'Drill ' || n, '{}' FROM generate_series(1, 40) n",
                $$"""
                INSERT INTO chain.sessions (center_id, id, station, started_at, bowler_id, hand, drill_hash, lane_name, setup_json, simulated, ended_at, last_sequence, shots, points)
                SELECT 1 + n % 200, 's' || n, 1 + n % 32, at, 1 + n % 20000, 'right', 'hash ' || (1 + n % 40), 'lane', repeat('x', 1500), false, at + interval '1 hour', 62, {{ShotsASession}}, 100
                FROM (SELECT n, timestamptz '2024-01-01 00:00Z' + (n * 63072000.0 / {{sessions}}) * interval '1 second' AS at FROM generate_series(1, {{sessions}}) n) made
                """,
                $"INSERT INTO chain.blocks (session_key, run, name, kind) SELECT key, run, 'block', CASE run WHEN 0 THEN 'test' ELSE 'training' END FROM chain.sessions, generate_series(0, 1) run",
                $"""
                INSERT INTO chain.crossings (started_at, session_key, number, position, run, distance_feet, centre_board, width_boards, crossing_board, miss_boards, points, held, counts, name)
                SELECT started_at, key, number, 0, number % 2, 15, 10, 3, 10 + miss, miss, 1, abs(miss) <= 1.5, number <> 30, 'second arrow'
                FROM chain.sessions, generate_series(1, {ShotsASession}) number, LATERAL (SELECT round(((key * 7919 + number * 104729) % 601 - 300) / 100.0, 2)::float8 AS miss) made
                """,

                // One step in ten, at its true length of about 1 kB: the log of all would be as long again as everything else together.
                $"""
                INSERT INTO chain.log_steps (started_at, session_key, sequence, at, input_json, events_json)
                SELECT started_at, key, sequence, started_at + sequence * interval '20 seconds', repeat('i', 200), repeat('e', 900)
                FROM chain.sessions, generate_series(1, {ShotsASession}) sequence WHERE key % 10 = 7
                """,
                """
                INSERT INTO chain.sums (session_key, run, name, distance_feet, kind, shots, graded, held, sum_of_misses, sum_of_sizes, sum_of_squares)
                SELECT session_key, run, name, distance_feet, CASE run WHEN 0 THEN 'test' ELSE 'training' END, count(*), count(miss_boards), count(*) FILTER (WHERE held),
                    sum(miss_boards), sum(abs(miss_boards)), sum(miss_boards * miss_boards)
                FROM chain.crossings WHERE counts GROUP BY session_key, run, name, distance_feet
                """,
                "VACUUM ANALYZE",
            ])
        {
            using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
            await command.ExecuteNonQueryAsync();
        }
    }

    private static async Task<(long Key, string Started)> PlaceAsync(NpgsqlConnection connection, string sql)
    {
        using var command = new NpgsqlCommand(sql, connection);
        using var reader = await command.ExecuteReaderAsync();
        await reader.ReadAsync();
        return (reader.GetInt64(0), reader.GetDateTime(1).ToString("yyyy-MM-dd HH:mm:ss.ffffffZ", CultureInfo.InvariantCulture));
    }

    /// <summary>The plan of the second run, when what it reads is in memory, and the time of the first.</summary>
    private static async Task PlanAsync(NpgsqlConnection connection, string name, string sql)
    {
        var from = Stopwatch.GetTimestamp();
        await TextAsync(connection, sql);
        var first = Stopwatch.GetElapsedTime(from).TotalMilliseconds;
        Console.WriteLine();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"-- {name}: first time {first:0.0} ms"));
        Console.WriteLine(await TextAsync(connection, "EXPLAIN (ANALYZE, BUFFERS, COSTS OFF) " + sql));
    }

    private static string Filled(string sql, params string[] values)
    {
        for (var i = 0; i < values.Length; i++)
        {
            sql = sql.Replace("{" + i.ToString(CultureInfo.InvariantCulture) + "}", values[i], StringComparison.Ordinal);
        }

        return sql;
    }

    private static async Task<string> TextAsync(NpgsqlConnection connection, string sql)
    {
        using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
        using var reader = await command.ExecuteReaderAsync();
        var lines = new List<string>();
        while (await reader.ReadAsync())
        {
            lines.Add(reader.GetValue(0)?.ToString() ?? "");
        }

        return string.Join('\n', lines);
    }
}
