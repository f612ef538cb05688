using System.Globalization;
using AimTrainer.Sessions;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>
/// Lets one process at a time write to a record: a lock that the server holds for a connection and drops with it. Without it two hosts
/// could each believe that they know how far a session has come.
/// </summary>
internal static class WriterLock
{
    /// <summary>"AIMT" and "wrtr": any number of our own serves, locks of this kind belong to one database.</summary>
    private const long Key = 0x41494D5477727472;

    /// <summary>Takes the lock for as long as the connection is open.</summary>
    /// <exception cref="StoreUnavailableException">Another process holds it.</exception>
    public static void Take(NpgsqlConnection connection, string name)
    {
        var key = Key.ToString(CultureInfo.InvariantCulture);

        // A connection that was just closed holds its lock a moment longer: it is waited for.
        using var take = new NpgsqlCommand($"SET lock_timeout = '2s'; SELECT pg_advisory_lock({key}); SET lock_timeout = 0", connection);
        try
        {
            take.ExecuteNonQuery();
            return;
        }
        catch (PostgresException exception) when (exception.SqlState == PostgresErrorCodes.LockNotAvailable)
        {
            throw new StoreUnavailableException(
                $"{name} is in use by another aimtrainer (from {Holder(connection)}), so nothing is kept from here. Close that one, or use another database; "
                + "when that machine has just lost its power or its network, the server lets go after half a minute", exception);
        }
    }

    /// <summary>Lets the lock go at once; closing the connection does too, a moment later.</summary>
    public static void Release(NpgsqlConnection connection)
    {
        if (connection.State == System.Data.ConnectionState.Open)
        {
            using var release = new NpgsqlCommand("SELECT pg_advisory_unlock_all()", connection);
            try
            {
                release.ExecuteNonQuery();
            }
            catch (NpgsqlException)
            {
                // The connection is broken, and the lock goes with it.
            }
        }
    }

    private static string Holder(NpgsqlConnection connection)
    {
        using var who = new NpgsqlCommand(
            """
            SELECT coalesce(host(client_addr), 'the server itself') FROM pg_locks JOIN pg_stat_activity USING (pid)
            WHERE locktype = 'advisory' AND granted AND database = (SELECT oid FROM pg_database WHERE datname = current_database())
                AND ((classid::bigint << 32) | objid::bigint) = $1
            """,
            connection);
        who.Parameters.Add(new NpgsqlParameter { Value = Key });
        return who.ExecuteScalar() as string ?? "one that just left";
    }
}
