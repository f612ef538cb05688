using System.Reflection;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Migrations;

namespace AimTrainer.Store.Sqlite;

/// <summary>Which tables a file has, told by the migrations that were applied to it.</summary>
internal static class RecordSchema
{
    /// <summary>The migrations of this program, oldest first. Read from the assembly: asking EF would first build its whole model.</summary>
    public static IReadOnlyList<string> Known { get; } =
    [
        .. typeof(RecordSchema).Assembly.GetTypes().Select(type => type.GetCustomAttribute<MigrationAttribute>()?.Id).OfType<string>()
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Looks at a file without changing it.</summary>
    /// <returns>Whether its tables are those of this program; false when they are older, or there are none yet.</returns>
    /// <exception cref="StoreUnavailableException">The file is something else, or newer than this program.</exception>
    /// <exception cref="SqliteException">It cannot be read.</exception>
    public static bool IsCurrent(SqliteConnection connection, string file)
    {
        var tables = SqliteDatabase.Number(connection, "SELECT count(*) FROM sqlite_master");
        var applicationId = SqliteDatabase.Number(connection, "PRAGMA application_id");
        if (applicationId != SqliteDatabase.ApplicationId && (applicationId != 0 || tables > 0))
        {
            throw new StoreUnavailableException(
                $"{file} is a database of another program, not a record of AimTrainer; nothing was changed. Choose another file or data folder");
        }

        var applied = Applied(connection);
        if (applied.Except(Known).FirstOrDefault() is { } unknown)
        {
            throw new StoreUnavailableException(
                $"{file} was made by a newer AimTrainer (it has \"{unknown}\", which this one does not know); nothing was changed. "
                + "Use the newer program, or another data folder");
        }

        return applied.Count == Known.Count;
    }

    /// <summary>Brings the file's tables up to this program. The caller holds the data folder.</summary>
    public static void Migrate(SqliteConnection connection)
    {
        SqliteDatabase.Execute(connection, $"PRAGMA application_id = {SqliteDatabase.ApplicationId}");

        // EF marks a migration under way with a row here and waits for ever for one that a killed process left behind. The data
        // folder is ours alone, so nobody can be migrating.
        SqliteDatabase.Execute(connection, "DROP TABLE IF EXISTS __EFMigrationsLock");
        using var context = SqliteDatabase.ContextOver(connection);
        context.Database.Migrate();
    }

    /// <summary>The changes that were made to a file's tables, oldest first.</summary>
    public static List<string> Applied(SqliteConnection connection)
    {
        var applied = new List<string>();
        if (SqliteDatabase.Number(connection, "SELECT count(*) FROM sqlite_master WHERE name = '__EFMigrationsHistory'") == 0)
        {
            return applied;
        }

        using var command = connection.CreateCommand();
        command.CommandText = "SELECT MigrationId FROM __EFMigrationsHistory ORDER BY MigrationId";
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            applied.Add(reader.GetString(0));
        }

        return applied;
    }
}
