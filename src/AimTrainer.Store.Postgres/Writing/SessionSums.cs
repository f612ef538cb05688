using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>Works out again what a session's log adds up to.</summary>
internal static class SessionSums
{
    /// <summary>Does it, in the transaction that the connection is in.</summary>
    public static void WorkOutAgain(NpgsqlConnection connection, long sessionKey)
    {
        using (var forget = new NpgsqlCommand(
            """
            DELETE FROM shot_targets WHERE session_key = $1;
            """, connection))
        {
            forget.Parameters.Add(new NpgsqlParameter { Value = sessionKey });
            forget.ExecuteNonQuery();
            forget.CommandText = "DELETE FROM graded_shots WHERE session_key = $1";
            forget.ExecuteNonQuery();
            forget.CommandText =
                """
                UPDATE sessions SET shots = 0, points = 0, run = NULL, block_name = NULL, block_kind = NULL, ended_at = NULL WHERE key = $1
                """;
            forget.ExecuteNonQuery();
        }

        List<LogStepRow> steps;
        string id;
        using (var record = PostgresDatabase.ContextOver(connection))
        {
            id = record.Sessions.AsNoTracking().Where(session => session.Key == sessionKey).Select(session => session.Id).Single();
            steps = [.. record.LogSteps.AsNoTracking().Where(step => step.SessionKey == sessionKey).OrderBy(step => step.Sequence)];
        }

        using var statements = PostgresStatements.Inside(connection);
        var keeper = new StepKeeper(statements);
        var session = keeper.FindSession(id)!;
        foreach (var step in steps)
        {
            keeper.AddUp(session, step.ToEntry());
        }

        statements.Flush();
    }
}
