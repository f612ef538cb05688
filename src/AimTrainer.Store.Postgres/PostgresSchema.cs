using System.Reflection;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>Which tables a database has, told by the migrations that were applied to it.</summary>
internal static class PostgresSchema
{
    /// <summary>The migrations of a context in this program, oldest first.</summary>
    public static IReadOnlyList<string> Known<TContext>()
        where TContext : DbContext =>
    [
        .. typeof(PostgresSchema).Assembly.GetTypes()
            .Where(type => type.GetCustomAttribute<DbContextAttribute>()?.ContextType == typeof(TContext))
            .Select(type => type.GetCustomAttribute<MigrationAttribute>()?.Id).OfType<string>().Order(StringComparer.Ordinal),
    ];

    /// <summary>Looks at a database without changing it.</summary>
    /// <returns>Whether its tables are those of this program; false when they are older, or there are none yet.</returns>
    /// <exception cref="StoreUnavailableException">The schema is another program's, or newer than this one.</exception>
    /// <exception cref="NpgsqlException">It cannot be read.</exception>
    public static bool IsCurrent(NpgsqlConnection connection, string schema, string name, IReadOnlyList<string> known)
    {
        var tables = Texts(connection, "SELECT tablename FROM pg_tables WHERE schemaname = $1", schema);
        if (tables.Count > 0 && !tables.Contains(PostgresDatabase.History))
        {
            throw new StoreUnavailableException(
                $"{name}: the schema \"{schema}\" there is another program's, not a record of AimTrainer; nothing was changed. Name another database");
        }

        var applied = tables.Count == 0 ? [] : Applied(connection, schema);
        if (applied.Except(known).FirstOrDefault() is { } unknown)
        {
            throw new StoreUnavailableException(
                $"{name} was made by a newer AimTrainer (it has \"{unknown}\", which this one does not know); nothing was changed. "
                + "Use the newer program, or another database");
        }

        return applied.Count == known.Count;
    }

    /// <summary>The changes that were made to the tables, oldest first; none when there are no tables.</summary>
    /// <exception cref="NpgsqlException">It cannot be read.</exception>
    public static IReadOnlyList<string> Applied(NpgsqlConnection connection, string schema) =>
        Texts(connection, "SELECT tablename FROM pg_tables WHERE schemaname = $1 AND tablename = $2", schema, PostgresDatabase.History).Count == 0 ? []
            : Texts(connection, $"SELECT \"MigrationId\" FROM {schema}.\"{PostgresDatabase.History}\" ORDER BY 1");

    private static List<string> Texts(NpgsqlConnection connection, string sql, params string[] values)
    {
        using var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        var texts = new List<string>();
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            texts.Add(reader.GetString(0));
        }

        return texts;
    }
}
