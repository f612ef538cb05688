using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>Takes sessions out of the chain for good, and notes their ids so that nothing of them comes back.</summary>
internal static class ChainErasing
{
    /// <summary>Does it in a transaction that holds the center's lock.</summary>
    /// <returns>How many sessions there was something of.</returns>
    public static int Erase(NpgsqlConnection connection, int center, List<string> sessions, DateTimeOffset now, bool centerDone)
    {
        Run(
            connection,
            """
            INSERT INTO erased_sessions (center_id, session_id, asked_at, center_done_at)
            SELECT $1, id, $3, CASE WHEN $4 THEN $3 END FROM unnest($2) AS id
            ON CONFLICT (center_id, session_id) DO UPDATE SET center_done_at = coalesce(erased_sessions.center_done_at, excluded.center_done_at)
            """,
            center, sessions, now.UtcDateTime, centerDone);
        const string These = "(SELECT key FROM sessions WHERE center_id = $1 AND id = ANY($2))";
        foreach (var table in ChainMonths.Tables)
        {
            // The month is named so that only its part is looked at.
            Run(
                connection,
                $"DELETE FROM {table} USING sessions WHERE sessions.center_id = $1 AND sessions.id = ANY($2) AND {table}.session_key = sessions.key AND {table}.started_at = sessions.started_at",
                center, sessions);
        }

        Run(connection, $"DELETE FROM blocks WHERE session_key IN {These}", center, sessions);
        Run(connection, $"DELETE FROM sums WHERE session_key IN {These}", center, sessions);
        var erased = Run(connection, "DELETE FROM sessions WHERE center_id = $1 AND id = ANY($2)", center, sessions);
        Run(connection, "DELETE FROM bowlers WHERE center_id = $1 AND NOT EXISTS (SELECT FROM sessions WHERE bowler_id = bowlers.id)", center);
        Run(connection, "DELETE FROM people WHERE NOT EXISTS (SELECT FROM bowlers WHERE person_id = people.id)");
        return erased;
    }

    private static int Run(NpgsqlConnection connection, string sql, params ReadOnlySpan<object> values)
    {
        using var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        return command.ExecuteNonQuery();
    }
}
