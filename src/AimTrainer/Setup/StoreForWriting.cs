using System.CommandLine;
using AimTrainer.Commands;
using AimTrainer.Store;
using AimTrainer.Store.Postgres;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Setup;

/// <summary>Opens the record that a command line names, alone.</summary>
internal static class StoreForWriting
{
    /// <param name="parsed">The command line.</param>
    /// <param name="folder">Its data folder, held.</param>
    public static IRecordStore Open(ParseResult parsed, DataFolder folder) => Open(RecordOption.Of(parsed), folder);

    /// <param name="record">The database; null for the file in the folder.</param>
    /// <param name="folder">The data folder, held.</param>
    public static IRecordStore Open(PostgresPlace? record, DataFolder folder) =>
        record is null ? SqliteSessionStore.Open(folder) : PostgresSessionStore.Open(record, TimeProvider.System);
}
