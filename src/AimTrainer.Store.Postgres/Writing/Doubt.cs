using System.Globalization;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>A transaction of which nobody knows yet whether it was kept: its connection broke while it was being committed.</summary>
/// <param name="transaction">The server's number of it.</param>
/// <param name="steps">The steps in it: session's key and sequence.</param>
/// <param name="newSession">The id of the session that it would make; null when it is about steps.</param>
internal sealed class Doubt(ulong transaction, IReadOnlyList<(long Session, long Sequence)> steps, string? newSession)
{
    /// <summary>Asks the server. A transaction that is still under way there is waited for by nobody: it ends with its broken connection.</summary>
    public bool WasKept(NpgsqlConnection connection)
    {
        using var command = new NpgsqlCommand($"SELECT pg_xact_status('{transaction.ToString(CultureInfo.InvariantCulture)}'::xid8)", connection);
        return command.ExecuteScalar() switch
        {
            "committed" => true,
            "in progress" => throw new TimeoutException("the server is still busy with it"),
            _ => false,
        };
    }

    /// <summary>
    /// Takes back what was kept: its senders were told that it was not. The steps go out of the log, and what they had added up to is
    /// worked out again from the steps before them.
    /// </summary>
    public void TakeBack(NpgsqlConnection connection)
    {
        if (!WasKept(connection))
        {
            return;
        }

        using var take = connection.BeginTransaction();
        if (newSession is not null)
        {
            Run(connection, "DELETE FROM sessions WHERE id = $1", newSession);
        }

        foreach (var group in steps.GroupBy(step => step.Session))
        {
            Run(connection, "DELETE FROM log_steps WHERE session_key = $1 AND sequence >= $2", group.Key, group.Min(step => step.Sequence));
            SessionSums.WorkOutAgain(connection, group.Key);
        }

        take.Commit();
    }

    private static void Run(NpgsqlConnection connection, string sql, params object[] values)
    {
        using var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        command.ExecuteNonQuery();
    }
}
