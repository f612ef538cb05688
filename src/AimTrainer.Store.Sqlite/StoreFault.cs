using System.Text.Json;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using SQLitePCL;

namespace AimTrainer.Store.Sqlite;

/// <summary>Turns what the system says into what a person can act on.</summary>
internal static class StoreFault
{
    private const string DiskFull = "the disk is full, so nothing more is kept. Free some space and try again";

    /// <summary>Whether an exception comes from the world (disk, file, lock) and not from a mistake in the program.</summary>
    public static bool IsWorlds(Exception exception) =>
        exception is IOException or UnauthorizedAccessException or JsonException
        || (SqliteCause(exception) is { } sqlite
            && sqlite.SqliteErrorCode is not (raw.SQLITE_CONSTRAINT or raw.SQLITE_ERROR or raw.SQLITE_MISUSE));

    /// <summary>Whether the database refused one row, and not the whole file.</summary>
    public static bool IsRefusedRow(Exception exception) => SqliteCause(exception)?.SqliteErrorCode == raw.SQLITE_CONSTRAINT;

    /// <summary>The exception for a person.</summary>
    /// <param name="file">The file it is about.</param>
    /// <param name="exception">One for which <see cref="IsWorlds"/> holds.</param>
    public static StoreUnavailableException For(string file, Exception exception)
    {
        var said = (SqliteCause(exception) ?? exception).Message;
        var words = SqliteCause(exception)?.SqliteErrorCode switch
        {
            raw.SQLITE_FULL => DiskFull,
            // The index of the log could not be made as long as it must be.
            raw.SQLITE_IOERR when SqliteCause(exception)!.SqliteExtendedErrorCode == raw.SQLITE_IOERR_SHMSIZE => DiskFull,
            raw.SQLITE_READONLY => "the file or its folder is read-only, so nothing is kept. Allow writing there, or use another data folder",
            raw.SQLITE_CANTOPEN => "the file cannot be opened. See that its folder exists and may be written to, or use another data folder",
            raw.SQLITE_BUSY or raw.SQLITE_LOCKED => "another program has the file locked. Close that program and try again",
            raw.SQLITE_CORRUPT => "the file is damaged. Restore the last backup (aimtrainer restore); the damaged file is kept beside it",
            raw.SQLITE_NOTADB => "this is not a database, or it is damaged from its first byte. Restore the last backup (aimtrainer restore)",
            raw.SQLITE_IOERR => "the disk reports an error, so nothing more is kept. Check the disk and its free space, then try again",
            _ when exception is JsonException => "a step of the record cannot be read. Restore the last backup (aimtrainer restore)",
            _ when exception is UnauthorizedAccessException => "this may not be read or written here. Allow it, or use another folder",
            _ => "the file cannot be used. Check the disk and its free space, then try again",
        };
        return new StoreUnavailableException($"{file}: {words}. (The system says: {said})", exception);
    }

    private static SqliteException? SqliteCause(Exception exception) => exception switch
    {
        SqliteException sqlite => sqlite,
        DbUpdateException { InnerException: SqliteException sqlite } => sqlite,
        _ => null,
    };
}
