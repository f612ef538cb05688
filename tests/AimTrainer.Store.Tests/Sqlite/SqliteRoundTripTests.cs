using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class SqliteRoundTripTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task Open_EveryConnectionThatWrites_IsSetToKeepWhatItCommits()
    {
        var found = new List<object?>();
        using (var record = new OpenRecord(_folder.Path, connection =>
        {
            foreach (var pragma in (string[])["journal_mode", "synchronous", "foreign_keys", "busy_timeout"])
            {
                found.Add(Sqlite.SqliteDatabase.Scalar(connection, "PRAGMA " + pragma));
            }
        }))
        {
            await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        }

        // 2 is FULL. Source: SQLite documentation, "PRAGMA synchronous".
        Assert.Equal(["wal", 2L, 1L, 5000L], found);
    }

    [Fact]
    public async Task Dispose_AfterWriting_LeavesOnePlainFileThatAnotherProgramCanRead()
    {
        using (var record = new OpenRecord(_folder.Path))
        {
            await KeepAsync(record.Store, Setup(), Shot());
        }

        Assert.False(File.Exists(_folder.File("aimtrainer.db-wal")));
        using var plain = new SqliteConnection($"Data Source={_folder.File("aimtrainer.db")};Pooling=False");
        plain.Open();
        Assert.Equal("ok", Sqlite.SqliteDatabase.Scalar(plain, "PRAGMA integrity_check"));
        Assert.Null(Sqlite.SqliteDatabase.Scalar(plain, "PRAGMA foreign_key_check"));
        Assert.Equal(2L, Sqlite.SqliteDatabase.Scalar(plain, "SELECT count(*) FROM log_steps"));
    }

    public void Dispose() => _folder.Dispose();
}
