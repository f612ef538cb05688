using AimTrainer.Sessions;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>
/// Frees the rows that an erasure left dead. A plain VACUUM, which shots do not wait for; VACUUM FULL would keep everybody out of each
/// table while it is written anew, and the bytes would still be in the server's log, its archive and the disk's freed blocks.
/// </summary>
internal static class DeadRows
{
    /// <summary>Does it, on a connection beside the writer's.</summary>
    /// <param name="connections">Where to get one.</param>
    /// <param name="name">The place, without a password.</param>
    /// <exception cref="StoreUnavailableException">The rows are erased, but were not freed.</exception>
    public static async Task FreeAsync(NpgsqlDataSource connections, string name)
    {
        try
        {
            // Not cancelled with the caller: it takes as long as it takes, and nobody waits for it but who asked for the erasure.
            using var connection = await connections.OpenConnectionAsync(CancellationToken.None).ConfigureAwait(false);
            using var command = new NpgsqlCommand($"VACUUM {string.Join(", ", Tables(connection))}", connection) { CommandTimeout = 0 };
            await command.ExecuteNonQueryAsync(CancellationToken.None).ConfigureAwait(false);
        }
        catch (Exception exception) when (PostgresFault.IsWorlds(exception))
        {
            throw new StoreUnavailableException(
                "the rows are erased, but the server could not free them (VACUUM). See to what is below; it is done once a day, at the next start, or when you erase once more. "
                + PostgresFault.For(name, exception).Message,
                exception);
        }
    }

    /// <summary>All but the drills, from the model, so that a table that is added one day is not forgotten.</summary>
    private static IEnumerable<string> Tables(NpgsqlConnection connection)
    {
        using var record = PostgresDatabase.ContextOver(connection);
        return ErasureStatements.Tables(record, typeof(BowlerRow));
    }
}
