using System.CommandLine;
using AimTrainer.Commands;
using AimTrainer.Output;
using AimTrainer.Store;
using AimTrainer.Store.Postgres;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Setup;

/// <summary>Opens the records beside whoever writes them.</summary>
internal static class StoreForReading
{
    /// <summary>The record that a command line names.</summary>
    public static IRecordStore Open(ParseResult parsed) =>
        RecordOption.Of(parsed) is { } place ? PostgresSessionStore.OpenForReading(place) : Open(DataPlace.Named(parsed));

    /// <summary>The record in a folder.</summary>
    public static IRecordStore Open(string? dataFolder)
    {
        using var folder = DataFolder.OpenForReading(dataFolder);
        return folder.HasRecord
            ? SqliteSessionStore.Open(folder)
            : throw NoRecord(folder);
    }

    /// <summary>There is nothing to read yet.</summary>
    public static UserException NoRecord(DataFolder folder) =>
        new($"{folder.FolderPath}: no record here yet; run a session first (aimtrainer demo), or name another folder with --data");
}
