using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Store.Sqlite;

/// <summary>What is found when a record is looked through, without changing it.</summary>
/// <param name="IsCurrent">Whether its tables are those of this program; false when an update would come at the next start.</param>
/// <param name="Version">The last change that was made to its tables; null when there was none.</param>
/// <param name="Damage">What SQLite's own check found wrong; empty when nothing is.</param>
/// <param name="NewestSession">When its newest session began; null when it has none.</param>
public sealed record RecordHealth(bool IsCurrent, string? Version, ValueList<string> Damage, DateTimeOffset? NewestSession)
{
    private const int MostDamage = 5;

    /// <summary>Looks through the record of a folder, also while a host runs on it.</summary>
    /// <param name="folder">The folder, held or not, with a record.</param>
    /// <exception cref="StoreUnavailableException">It is no record, newer than this program, or cannot be read.</exception>
    public static RecordHealth Of(DataFolder folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        try
        {
            using var connection = SqliteDatabase.OpenForReading(folder.DatabaseFile);
            var current = RecordSchema.IsCurrent(connection, folder.DatabaseFile);
            return new RecordHealth(current, RecordSchema.Applied(connection) is [.., var last] ? last : null, Damaged(connection), current ? Newest(folder.DatabaseFile) : null);
        }
        catch (Exception exception) when (StoreFault.IsWorlds(exception))
        {
            throw StoreFault.For(folder.DatabaseFile, exception);
        }
    }

    private static ValueList<string> Damaged(SqliteConnection connection)
    {
        var found = new List<string>();
        using var command = connection.CreateCommand();
        command.CommandText = $"PRAGMA integrity_check({MostDamage})";
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            found.Add(reader.GetString(0));
        }

        return found is ["ok"] ? [] : found.ToValueList();
    }

    private static DateTimeOffset? Newest(string file)
    {
        using var store = SqliteSessionStore.OpenFile(file);
        return store.ListAsync(new SessionFilter { Limit = 1 }, CancellationToken.None).GetAwaiter().GetResult() is [var newest, ..] ? newest.StartedAt : null;
    }
}
