using System.Globalization;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using SQLitePCL;
using Microsoft.EntityFrameworkCore.Migrations;

namespace AimTrainer.Store.Sqlite;

/// <summary>Opens the database file the way the record needs it.</summary>
internal static class SqliteDatabase
{
    /// <summary>"AIMT" in the file's header: what tells a record from any other SQLite file.</summary>
    public const int ApplicationId = 0x41494D54;

    /// <summary>How long to wait for another program that has the file locked.</summary>
    private const int BusyMilliseconds = 5000;

    /// <summary>A connection that keeps what it commits: WAL, and each commit on the disk before it returns.</summary>
    public static SqliteConnection OpenForWriting(string file)
    {
        var connection = Open(file, SqliteOpenMode.ReadWriteCreate);
        try
        {
            if (Scalar(connection, "PRAGMA journal_mode = WAL") is not "wal")
            {
                throw new StoreUnavailableException(
                    $"{file}: this disk cannot hold a write-ahead log (a network drive often cannot); use a data folder on a disk of this machine");
            }

            // fullfsync matters on macOS only, where a plain fsync leaves the data in the drive's cache. Checkpoints are made by
            // the writer after it has acknowledged, so that no shot waits for one.
            Execute(connection, """
                PRAGMA synchronous = FULL;
                PRAGMA fullfsync = ON;
                PRAGMA checkpoint_fullfsync = ON;
                PRAGMA wal_autocheckpoint = 0;
                PRAGMA journal_size_limit = 67108864;
                PRAGMA temp_store = MEMORY;
                PRAGMA secure_delete = ON;
                """);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>
    /// A connection that cannot change anything, beside whoever writes. A change that a killed process left half done is first
    /// taken back, as SQLite does for whoever may write.
    /// </summary>
    public static SqliteConnection OpenForReading(string file)
    {
        try
        {
            return OpenAndRead(file, SqliteOpenMode.ReadOnly);
        }
        catch (SqliteException exception) when (exception.SqliteExtendedErrorCode == raw.SQLITE_READONLY_ROLLBACK)
        {
            OpenAndRead(file, SqliteOpenMode.ReadWrite).Dispose();
            return OpenAndRead(file, SqliteOpenMode.ReadOnly);
        }
    }

    /// <summary>A context over an open connection, which it closes with itself when it owns it.</summary>
    public static RecordContext ContextOver(SqliteConnection connection, bool owns = false) =>
        new(new DbContextOptionsBuilder<RecordContext>()
            .UseSqlite(connection, owns, sqlite => sqlite.MigrationsAssembly(typeof(SqliteDatabase).Assembly))
            .ReplaceService<IMigrationsSqlGenerator, RecordTables>()
            .Options);

    /// <summary>Runs statements that give no answer.</summary>
    public static void Execute(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    /// <summary>The first value of a statement's answer.</summary>
    public static object? Scalar(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    /// <summary>The first value of a statement's answer, a whole number.</summary>
    public static long Number(SqliteConnection connection, string sql) =>
        Convert.ToInt64(Scalar(connection, sql), CultureInfo.InvariantCulture);

    private static SqliteConnection OpenAndRead(string file, SqliteOpenMode mode)
    {
        var connection = Open(file, mode);
        try
        {
            Scalar(connection, "PRAGMA schema_version");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    private static SqliteConnection Open(string file, SqliteOpenMode mode)
    {
        // Not pooled: a pool would hold the file open after the record is closed, and a restore must replace it.
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = file,
            Mode = mode,
            Pooling = false,
            ForeignKeys = true,
            DefaultTimeout = BusyMilliseconds / 1000,
        }.ToString());
        try
        {
            connection.Open();
            Execute(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA busy_timeout = {BusyMilliseconds}"));
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
