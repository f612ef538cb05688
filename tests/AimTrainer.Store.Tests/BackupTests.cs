using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using Microsoft.Data.Sqlite;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class BackupTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly TemporaryFolder _elsewhere = new();
    private readonly FixedTime _time = new();

    private string Backup => _elsewhere.File("backup.db");

    [Fact]
    public async Task BackupAsync_WhileASessionRuns_HoldsEverythingAcknowledgedAndTheSessionGoesOn()
    {
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record.Store, Setup(), Shot(), Shot());
        var going = Task.Run(
            async () =>
            {
                for (var i = 4; i <= 200; i++)
                {
                    await record.Store.AppendAsync("s1", Noted(i), Cancel);
                }
            },
            Cancel);

        // From a folder that is not held, as a second process would.
        var report = await RecordBackup.BackupAsync(DataFolder.OpenForReading(_folder.Path), Backup, false, Cancel);
        await going;

        Assert.Equal((Backup, 1L, new FileInfo(Backup).Length), (report.File, report.Sessions, report.Bytes));
        Assert.Equal(["backup.db"], Names(_elsewhere.Path));
        await RestoreIntoAsync(_elsewhere.File("other"));
        using var other = new OpenRecord(_elsewhere.File("other"));
        var kept = await LogAsync(other.Store, "s1");
        Assert.InRange(kept.Count, 3, 200);
        Assert.Equal((await LogAsync(record.Store, "s1")).Take(kept.Count).Select(Json), kept.Select(Json));
    }

    [Fact]
    public async Task BackupAsync_FileExists_IsRefusedUnlessTold()
    {
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record.Store, Setup(), Shot());
        await File.WriteAllTextAsync(Backup, "precious", Cancel);

        var refused = await Assert.ThrowsAsync<StoreUnavailableException>(() => RecordBackup.BackupAsync(record.Folder, Backup, false, Cancel));
        Assert.Contains(Backup, refused.Message, StringComparison.Ordinal);
        Assert.Equal("precious", await File.ReadAllTextAsync(Backup, Cancel));

        await RecordBackup.BackupAsync(record.Folder, Backup, true, Cancel);
        Assert.NotEqual("precious", await File.ReadAllTextAsync(Backup, Cancel));
    }

    [Fact]
    public async Task BackupAsync_PlacesThatCannotBe_SayWhatToDoAndLeaveNothing()
    {
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record.Store, Setup());
        foreach (var path in (string[])[_elsewhere.File("missing/backup.db"), _elsewhere.Path, record.Folder.DatabaseFile])
        {
            var refused = await Assert.ThrowsAsync<StoreUnavailableException>(() => RecordBackup.BackupAsync(record.Folder, path, true, Cancel));
            Assert.Contains(path, refused.Message, StringComparison.Ordinal);
        }

        Assert.Empty(Names(_elsewhere.Path));
        Assert.Single(await record.Store.ListAsync(new SessionFilter(), Cancel));
    }

    [Fact]
    public async Task BackupAsync_NoRecord_SaysSo()
    {
        using var folder = DataFolder.Open(_folder.Path);
        await Assert.ThrowsAsync<StoreUnavailableException>(() => RecordBackup.BackupAsync(folder, Backup, false, Cancel));
        Assert.False(File.Exists(Backup));
    }

    [Fact]
    public async Task BackupAsync_NoRoom_SaysSoAndLeavesNothing()
    {
        using var disk = TinyDisk.OrSkip("64k");
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record.Store, Setup(), [.. Enumerable.Repeat(Shot(), 30)]);
        var refused = await Assert.ThrowsAsync<StoreUnavailableException>(
            () => RecordBackup.BackupAsync(record.Folder, Path.Combine(disk.Path, "backup.db"), false, Cancel));
        Assert.Contains("Free some space", refused.Message, StringComparison.Ordinal);
        Assert.Empty(Names(disk.Path));
    }

    [Fact]
    public async Task RestoreAsync_OverARecord_PutsTheBackupBackAndKeepsTheReplacedOne()
    {
        await MakeBackupAsync();
        using (var record = new OpenRecord(_folder.Path))
        {
            await KeepAsync(record.Store, Setup("later") with { At = Start.AddDays(1) }, Shot());
        }

        BackupReport report;
        using (var folder = DataFolder.Open(_folder.Path))
        {
            report = await RecordBackup.RestoreAsync(folder, Backup, _time, Cancel);
        }

        Assert.Equal(_folder.File("aimtrainer.db.before-restore-20260401T080910Z"), report.Replaced);
        Assert.Equal(1, report.Sessions);
        Assert.Equal(["s1"], await SessionsAsync(_folder.Path));
        Assert.Equal(
            ["aimtrainer.db", "aimtrainer.db.before-restore-20260401T080910Z", "aimtrainer.lock", "aimtrainer.pid"], Names(_folder.Path));

        // The replaced one is whole: it can itself be put back, in the same second too.
        using (var folder = DataFolder.Open(_folder.Path))
        {
            report = await RecordBackup.RestoreAsync(folder, report.Replaced!, _time, Cancel);
        }

        Assert.EndsWith("Z-2", report.Replaced, StringComparison.Ordinal);
        Assert.Equal(["later", "s1"], await SessionsAsync(_folder.Path));
    }

    [Fact]
    public async Task RestoreAsync_RecordLeftByAKill_KeepsItsLogWithTheReplacedOne()
    {
        await MakeBackupAsync();
        using var killed = new TemporaryFolder();
        using (var record = new OpenRecord(_folder.Path))
        {
            await record.Store.CreateAsync(Setup("later") with { At = Start.AddDays(1) }, Drill(), Cancel);
            File.Copy(_folder.File("aimtrainer.db"), killed.File("aimtrainer.db"));
            File.Copy(_folder.File("aimtrainer.db-wal"), killed.File("aimtrainer.db-wal"));
        }

        BackupReport report;
        using (var folder = DataFolder.Open(killed.Path))
        {
            report = await RecordBackup.RestoreAsync(folder, Backup, _time, Cancel);
        }

        Assert.Equal(["s1"], await SessionsAsync(killed.Path));
        Assert.False(File.Exists(killed.File("aimtrainer.db-wal")));
        using (var folder = DataFolder.Open(killed.Path))
        {
            await RecordBackup.RestoreAsync(folder, report.Replaced!, _time, Cancel);
        }

        Assert.Equal(["later", "s1"], await SessionsAsync(killed.Path));
    }

    [Fact]
    public async Task RestoreAsync_OverADamagedRecord_PutsTheBackupBackAndKeepsTheDamagedBytes()
    {
        await MakeBackupAsync();
        byte[] rubbish = [.. Enumerable.Repeat((byte)'x', 5000)];
        await File.WriteAllBytesAsync(_folder.File("aimtrainer.db"), rubbish, Cancel);
        using (var folder = DataFolder.Open(_folder.Path))
        {
            var report = await RecordBackup.RestoreAsync(folder, Backup, _time, Cancel);
            Assert.Equal(rubbish, await File.ReadAllBytesAsync(report.Replaced!, Cancel));
        }

        Assert.Equal(["s1"], await SessionsAsync(_folder.Path));
    }

    [Fact]
    public async Task RestoreAsync_IntoAnEmptyFolder_ReplacesNothing()
    {
        await MakeBackupAsync();
        var report = await RestoreIntoAsync(_elsewhere.File("other"));
        Assert.Null(report.Replaced);
        Assert.Equal(["s1"], await SessionsAsync(_elsewhere.File("other")));
    }

    [Theory]
    [InlineData("missing", "no such file")]
    [InlineData("text", "not a database")]
    [InlineData("empty", "is empty")]
    [InlineData("foreign", "another program")]
    [InlineData("newer", "newer AimTrainer")]
    [InlineData("damaged", "damaged")]
    [InlineData("cut", "damaged")]
    public async Task RestoreAsync_FileThatIsNoHealthyRecord_IsRefusedAndNothingChanges(string kind, string expected)
    {
        await MakeBackupAsync();
        Spoil(kind);
        var before = Names(_folder.Path);
        var bytes = await File.ReadAllBytesAsync(_folder.File("aimtrainer.db"), Cancel);
        using (var folder = DataFolder.Open(_folder.Path))
        {
            var refused = await Assert.ThrowsAsync<StoreUnavailableException>(() => RecordBackup.RestoreAsync(folder, Backup, _time, Cancel));
            Assert.Contains(Backup, refused.Message, StringComparison.Ordinal);
            Assert.Contains(expected, refused.Message, StringComparison.Ordinal);
        }

        Assert.Equal(before, Names(_folder.Path));
        Assert.Equal(bytes, await File.ReadAllBytesAsync(_folder.File("aimtrainer.db"), Cancel));
        Assert.Equal(["s1"], await SessionsAsync(_folder.Path));
    }

    [Fact]
    public async Task RestoreAsync_FolderThatIsNotHeld_Throws() =>
        await Assert.ThrowsAsync<InvalidOperationException>(
            () => RecordBackup.RestoreAsync(DataFolder.OpenForReading(_folder.Path), Backup, _time, Cancel));

    public void Dispose()
    {
        _folder.Dispose();
        _elsewhere.Dispose();
    }

    private async Task MakeBackupAsync()
    {
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record.Store, Setup(), [.. Enumerable.Repeat(Shot(), 60)]);
        await RecordBackup.BackupAsync(record.Folder, Backup, false, Cancel);
    }

    private async Task<BackupReport> RestoreIntoAsync(string path)
    {
        using var folder = DataFolder.Open(path);
        return await RecordBackup.RestoreAsync(folder, Backup, _time, Cancel);
    }

    private void Spoil(string kind)
    {
        switch (kind)
        {
            case "missing":
                File.Delete(Backup);
                break;
            case "text":
                File.WriteAllText(Backup, string.Join('\n', Enumerable.Repeat("time,bowler,arrowsBoard", 100)));
                break;
            case "empty":
                File.WriteAllBytes(Backup, []);
                break;
            case "foreign":
                File.Delete(Backup);
                Change("CREATE TABLE recipes (name TEXT)");
                break;
            case "newer":
                Change("INSERT INTO __EFMigrationsHistory VALUES ('29990101000000_FromTheFuture', '99.0.0')");
                break;
            case "damaged":
                // Overwrites the pages of an index and of a table in the middle of the file.
                var bytes = File.ReadAllBytes(Backup);
                bytes.AsSpan(bytes.Length / 2, 8192).Fill(0xA5);
                File.WriteAllBytes(Backup, bytes);
                break;
            case "cut":
                File.WriteAllBytes(Backup, File.ReadAllBytes(Backup)[..^8192]);
                break;
        }
    }

    private void Change(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Backup};Pooling=False");
        connection.Open();
        SqliteDatabase.Execute(connection, sql);
    }

    private static async Task<IEnumerable<string>> SessionsAsync(string path)
    {
        using var record = new OpenRecord(path);
        return (await record.Store.ListAsync(new SessionFilter(), Cancel)).Select(line => line.SessionId);
    }

    private static List<string> Names(string path) =>
        Directory.EnumerateFileSystemEntries(path).Select(entry => Path.GetFileName(entry)).Order(StringComparer.Ordinal).ToList();

    private sealed class FixedTime : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 4, 1, 8, 9, 10, TimeSpan.Zero);
    }
}
