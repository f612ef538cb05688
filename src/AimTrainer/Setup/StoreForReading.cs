using AimTrainer.Output;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Setup;

/// <summary>Opens the records beside whoever writes them.</summary>
internal static class StoreForReading
{
    public static SqliteSessionStore Open(string? dataFolder)
    {
        using var folder = DataFolder.OpenForReading(dataFolder);
        return folder.HasRecord
            ? SqliteSessionStore.Open(folder)
            : throw new UserException($"{folder.FolderPath}: no record here yet; run a session first (aimtrainer demo), or name another folder with --data");
    }
}
