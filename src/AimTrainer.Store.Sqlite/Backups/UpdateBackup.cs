using System.Globalization;

namespace AimTrainer.Store.Sqlite;

/// <summary>Copies a record aside before an update changes its tables.</summary>
internal static class UpdateBackup
{
    /// <summary>
    /// Makes the copy <c>aimtrainer.db.before-update-...</c>, named by the last change that was made to the tables. An earlier copy stays.
    /// </summary>
    /// <param name="folder">The folder, which is held.</param>
    /// <returns>The copy; null when there is nothing in the file yet.</returns>
    /// <exception cref="Sessions.StoreUnavailableException">The copy cannot be made, or the record is damaged: then nothing is changed.</exception>
    public static string? Make(DataFolder folder)
    {
        if (!File.Exists(folder.DatabaseFile) || Version(folder.DatabaseFile) is not { } version)
        {
            return null;
        }

        var first = $"{folder.DatabaseFile}.before-update-from-{version}";
        var copy = first;
        for (var again = 2; File.Exists(copy); again++)
        {
            copy = string.Create(CultureInfo.InvariantCulture, $"{first}-{again}");
        }

        RecordBackup.BackupAsync(folder, copy, overwrite: false, CancellationToken.None).GetAwaiter().GetResult();
        return copy;
    }

    private static string? Version(string file)
    {
        using var connection = SqliteDatabase.OpenForReading(file);
        if (SqliteDatabase.Number(connection, "SELECT count(*) FROM sqlite_master WHERE name = 'sessions'") == 0)
        {
            return null;
        }

        return RecordSchema.Applied(connection) is [.., var last] ? last : "the-first";
    }
}
