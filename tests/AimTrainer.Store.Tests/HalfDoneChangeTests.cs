using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using Microsoft.Data.Sqlite;
using SQLitePCL;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

/// <summary>A process that was killed within a change that SQLite makes without its log leaves a journal that takes it back.</summary>
public sealed class HalfDoneChangeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly TemporaryFolder _left = new();

    [Fact]
    public async Task ListAsync_ChangeLeftHalfDone_IsTakenBackAndTheRecordIsRead()
    {
        await LeaveHalfDoneAsync();
        using var folder = DataFolder.OpenForReading(_left.Path);
        Assert.Equal(raw.SQLITE_READONLY_ROLLBACK, ReadOnlyFault(folder.DatabaseFile));

        using var store = SqliteSessionStore.Open(folder);
        var found = await store.ListAsync(new SessionFilter(), Cancel);

        Assert.Equal("s1", Assert.Single(found).SessionId);
        Assert.False(File.Exists(folder.DatabaseFile + "-journal"));
    }

    [Fact]
    public async Task RestoreAsync_OverAChangeLeftHalfDone_PutsTheBackupInPlaceAndKeepsTheRecordWhole()
    {
        await LeaveHalfDoneAsync();
        var backup = _folder.File("backup.db");
        using (var source = DataFolder.OpenForReading(_folder.Path))
        {
            await RecordBackup.BackupAsync(source, backup, false, Cancel);
        }

        BackupReport report;
        using (var folder = DataFolder.Open(_left.Path))
        {
            report = await RecordBackup.RestoreAsync(folder, backup, TimeProvider.System, Cancel);
        }

        using var restored = new OpenRecord(_left.Path);
        Assert.Single(await restored.Store.ListAsync(new SessionFilter(), Cancel));
        Assert.Equal("ok", Checked(report.Replaced!));
        Assert.Equal("ok", Checked(restored.Folder.DatabaseFile));
    }

    public void Dispose()
    {
        _folder.Dispose();
        _left.Dispose();
    }

    /// <summary>Copies a record as it stands in the middle of a transaction: no process that could finish it is left with the copy.</summary>
    private async Task LeaveHalfDoneAsync()
    {
        string file;
        using (var record = new OpenRecord(_folder.Path))
        {
            file = record.Folder.DatabaseFile;
            await KeepAsync(record.Store, Setup(), Shot());
        }

        using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        connection.Open();
        SqliteDatabase.Execute(connection, "PRAGMA journal_mode = DELETE");

        // More than fits in its memory, so that pages are written before the end.
        SqliteDatabase.Execute(connection, "PRAGMA cache_size = 5; BEGIN; UPDATE sessions SET lane_name = 'half done'; UPDATE log_steps SET input_json = '{}'");
        SqliteDatabase.Execute(connection, "CREATE TABLE half_done (piece BLOB); INSERT INTO half_done VALUES (zeroblob(1000000))");
        File.Copy(file, _left.File("aimtrainer.db"));
        File.Copy(file + "-journal", _left.File("aimtrainer.db-journal"));
        SqliteDatabase.Execute(connection, "ROLLBACK");
    }

    private static int ReadOnlyFault(string file)
    {
        using var connection = new SqliteConnection($"Data Source={file};Mode=ReadOnly;Pooling=False");
        return Assert.Throws<SqliteException>(() =>
        {
            connection.Open();
            SqliteDatabase.Scalar(connection, "SELECT count(*) FROM sessions");
        }).SqliteExtendedErrorCode;
    }

    private static object? Checked(string file)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        connection.Open();
        Assert.Equal(0L, SqliteDatabase.Scalar(connection, "SELECT count(*) FROM sqlite_master WHERE name = 'half_done'"));
        return SqliteDatabase.Scalar(connection, "PRAGMA integrity_check");
    }
}
