using AimTrainer.Sessions;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>What is found when a record in a PostgreSQL database is looked at, without changing it.</summary>
/// <param name="Server">The server's version, as it says it.</param>
/// <param name="IsOldServer">Whether its version is older than <see cref="LeastVersion"/>.</param>
/// <param name="Applied">How many changes were made to its tables; 0 when there are none yet.</param>
/// <param name="Known">How many this program knows.</param>
/// <param name="Version">The last change that was made; null when there was none.</param>
/// <param name="WritingProblem">Why this user cannot write there, and what to do; null when nothing is in the way.</param>
/// <param name="ClockAhead">By how much the server's clock is ahead of this machine's; negative when it is behind.</param>
/// <param name="ClockWithin">How exact that is: half the time that the question took.</param>
/// <param name="NewestSession">When its newest session began; null when it has none, or its tables are older.</param>
public sealed record PostgresHealth(
    string Server, bool IsOldServer, int Applied, int Known, string? Version, string? WritingProblem, TimeSpan ClockAhead, TimeSpan ClockWithin, DateTimeOffset? NewestSession)
{
    /// <summary>The oldest server that may hold a record (docs/store.md).</summary>
    public const int LeastVersion = 13;

    /// <summary>Whether its tables are those of this program.</summary>
    public bool IsCurrent => Applied == Known;

    /// <summary>Looks at a database, also while a host works on it.</summary>
    /// <param name="place">Which.</param>
    /// <param name="clock">This machine's time.</param>
    /// <param name="cancellationToken">Ends it.</param>
    /// <exception cref="StoreUnavailableException">It cannot be reached, is no record, or newer than this program.</exception>
    public static async Task<PostgresHealth> OfAsync(PostgresPlace place, TimeProvider clock, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(clock);
        try
        {
            var connection = new NpgsqlConnection(place.ForLooking(PostgresModel.Schema));
            await using (connection.ConfigureAwait(false))
            {
                await connection.OpenAsync(cancellationToken).ConfigureAwait(false);
                PostgresSessionStore.CheckFlushes(connection, place);
                var known = PostgresSchema.Known<RecordContext>();
                PostgresSchema.IsCurrent(connection, PostgresModel.Schema, place.Name, known);
                var applied = PostgresSchema.Applied(connection, PostgresModel.Schema);
                var (ahead, within) = await ClockAsync(connection, clock, cancellationToken).ConfigureAwait(false);
                return new PostgresHealth(
                    connection.ServerVersion, connection.PostgreSqlVersion.Major < LeastVersion, applied.Count, known.Count, applied is [.., var last] ? last : null,
                    await WritingAsync(connection, applied.Count == known.Count, applied.Count == 0, cancellationToken).ConfigureAwait(false), ahead, within,
                    applied.Count == known.Count && await AskAsync<DateTime?>(connection, Newest, cancellationToken).ConfigureAwait(false) is { } newest
                        ? new DateTimeOffset(newest, TimeSpan.Zero) : null);
            }
        }
        catch (Exception exception) when (PostgresFault.IsWorlds(exception))
        {
            throw PostgresFault.For(place.Name, exception);
        }
    }

    private static async Task<(TimeSpan Ahead, TimeSpan Within)> ClockAsync(NpgsqlConnection connection, TimeProvider clock, CancellationToken cancellationToken)
    {
        var (before, from) = (clock.GetUtcNow(), clock.GetTimestamp());
        var there = await AskAsync<DateTime>(connection, "SELECT clock_timestamp()", cancellationToken).ConfigureAwait(false);
        var half = clock.GetElapsedTime(from) / 2;
        return (new DateTimeOffset(there, TimeSpan.Zero) - before - half, half);
    }

    /// <summary>By the rights that the server itself says the user has; nothing is written to find out.</summary>
    private static async Task<string?> WritingAsync(NpgsqlConnection connection, bool isCurrent, bool isEmpty, CancellationToken cancellationToken)
    {
        if (await AskAsync<bool>(connection, "SELECT pg_is_in_recovery()", cancellationToken).ConfigureAwait(false))
        {
            return "the server is a standby, which takes no changes: name the server that takes them";
        }

        if (await AskAsync<string>(connection, "SHOW transaction_read_only", cancellationToken).ConfigureAwait(false) == "on")
        {
            return "the database or this user is set read-only: ALTER ROLE or ALTER DATABASE ... SET default_transaction_read_only = off, or name another";
        }

        var user = await AskAsync<string>(connection, "SELECT current_user::text", cancellationToken).ConfigureAwait(false);
        if (isEmpty)
        {
            return await AskAsync<bool>(connection, MayMake, cancellationToken).ConfigureAwait(false) ? null
                : $"the tables are still to be made, and {user} may not make them: GRANT CREATE ON DATABASE, or use another user for the first start";
        }

        if (!isCurrent && !await AskAsync<bool>(connection, MayChange, cancellationToken).ConfigureAwait(false))
        {
            return $"the tables are still to be changed, and {user} does not own them: let their owner start the new program once";
        }

        var closed = await AskAsync<string?>(connection, Closed, cancellationToken).ConfigureAwait(false);
        return closed is null ? null
            : $"{user} may not write to {closed}: GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES, and USAGE on the schema and all its sequences, or use the user that made them";
    }

    private const string Newest = $"SELECT max(started_at) FROM {PostgresModel.Schema}.sessions";

    private const string MayMake = $"""
        SELECT CASE WHEN to_regnamespace('{PostgresModel.Schema}') IS NULL THEN has_database_privilege(current_database(), 'CREATE')
            ELSE has_schema_privilege('{PostgresModel.Schema}', 'CREATE') END
        """;

    private const string MayChange = $"""
        SELECT coalesce(bool_and(pg_has_role(c.relowner, 'USAGE')), true) FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
        WHERE n.nspname = '{PostgresModel.Schema}' AND c.relkind IN ('r', 'p')
        """;

    private const string Closed = $"""
        SELECT string_agg(c.relname, ', ' ORDER BY c.relname) FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
        WHERE n.nspname = '{PostgresModel.Schema}' AND CASE WHEN c.relkind IN ('r', 'p')
            THEN c.relname <> '{PostgresDatabase.History}' AND NOT (has_schema_privilege(n.oid, 'USAGE') AND has_table_privilege(c.oid, 'SELECT')
                AND has_table_privilege(c.oid, 'INSERT') AND has_table_privilege(c.oid, 'UPDATE') AND has_table_privilege(c.oid, 'DELETE'))
            WHEN c.relkind = 'S' THEN NOT has_sequence_privilege(c.oid, 'USAGE') ELSE false END
        """;

    private static async Task<T> AskAsync<T>(NpgsqlConnection connection, string sql, CancellationToken cancellationToken)
    {
        var command = new NpgsqlCommand(sql, connection);
        await using (command.ConfigureAwait(false))
        {
            return await command.ExecuteScalarAsync(cancellationToken).ConfigureAwait(false) is T value ? value : default!;
        }
    }
}
