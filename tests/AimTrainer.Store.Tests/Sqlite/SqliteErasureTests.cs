using System.Text;
using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Store.Tests;

/// <summary>What is erased is gone from the file's bytes and from the log beside it.</summary>
public sealed class SqliteErasureTests : IDisposable
{
    private const string Word = "Xanthippe";

    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task EraseBowlerAsync_AmongOthers_LeavesNoByteOfHer()
    {
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record, "hers", $"{Word} Lee");
        await KeepAsync(record, "his", "Ben");
        Assert.NotEmpty(FilesWith());

        var (erased, _) = await Erasing(record).EraseBowlerAsync($" {Word.ToUpperInvariant()}  lee", Cancelled);

        Assert.Equal(["hers"], erased!.Sessions);
        Assert.Empty(FilesWith());
        Assert.Equal(5, (await Scenario.LogAsync(record.Store, "his")).Count);
    }

    [Fact]
    public async Task EraseBeforeAsync_RetentionTime_LeavesNoByteOfHer()
    {
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record, "hers", $"{Word} Lee");
        Assert.NotNull(await Erasing(record).EraseBeforeAsync(Scenario.Start.AddMonths(1), Cancelled));
        Assert.Empty(FilesWith());
    }

    [Fact]
    public async Task EraseBowlerAsync_NotedWithoutTheName_AndAnOldCopyIsErasedAgain()
    {
        var backup = _folder.File("old.db");
        using (var record = new OpenRecord(_folder.Path))
        {
            await KeepAsync(record, "hers", $"{Word} Lee");
            await RecordBackup.BackupAsync(record.Folder, backup, false, Cancelled);
            Assert.Equal([backup], (await Erasing(record).EraseBowlerAsync($"{Word} Lee", Cancelled)).Erased!.CopiesLeft);
        }

        Assert.Equal([backup], FilesWith());
        Assert.Equal(["hers"], Assert.Single(new Erasures(_folder.Path).All()).Sessions);
        using (var held = DataFolder.Open(_folder.Path))
        {
            await RecordBackup.RestoreAsync(held, backup, TimeProvider.System, Cancelled);
        }

        using (var record = new OpenRecord(_folder.Path))
        {
            Assert.Equal(1, await Erasing(record).EraseAgainAsync(Cancelled));
        }

        Assert.Equal([backup], FilesWith());
    }

    [Fact]
    public async Task EraseBowlerAsync_SomebodyReadsAllTheTime_SaysThatBytesAreLeftAndTheNextOneTakesThem()
    {
        // Short waits; otherwise readers are waited for as long as any lock.
        using var record = new OpenRecord(_folder.Path, connection => SqliteDatabase.Execute(connection, "PRAGMA busy_timeout = 1"));
        await KeepAsync(record, "hers", $"{Word} Lee");
        using (var reader = SqliteDatabase.OpenForReading(record.Folder.DatabaseFile))
        {
            SqliteDatabase.Execute(reader, "BEGIN");
            SqliteDatabase.Number(reader, "SELECT count(*) FROM sessions");

            var told = await Assert.ThrowsAsync<StoreUnavailableException>(() => Erasing(record).EraseBowlerAsync($"{Word} Lee", Cancelled));

            Assert.Contains("their bytes still lie in its log", told.Message, StringComparison.Ordinal);
            Assert.NotEmpty(FilesWith());
            Assert.Null(Assert.Single(new Erasures(_folder.Path).All()).FinishedAt);
        }

        Assert.Equal((null, null), await Erasing(record).EraseBowlerAsync($"{Word} Lee", Cancelled));
        Assert.Empty(FilesWith());
        Assert.NotNull(Assert.Single(new Erasures(_folder.Path).All()).FinishedAt);
    }

    [Fact]
    public async Task EraseBowlerAsync_DiskIsFull_TakesNothingByHalvesAndAllOfItWhenThereIsRoom()
    {
        using var disk = TinyDisk.OrSkip("4m");
        using var record = new OpenRecord(disk.Path);
        await KeepAsync(record, "hers", $"{Word} Lee");
        var ballast = disk.Fill();
        var erasing = new RecordErasure(record.Store, disk.Path, TimeProvider.System);

        var told = await Assert.ThrowsAsync<StoreUnavailableException>(() => erasing.EraseBowlerAsync(Word + " Lee", Cancelled));

        Assert.Contains("disk", told.Message, StringComparison.Ordinal);
        Assert.NotNull(await record.Store.FindAsync("hers", Cancelled));
        Assert.Empty(erasing.Noted());
        File.Delete(ballast);
        Assert.NotNull((await erasing.EraseBowlerAsync(Word + " Lee", Cancelled)).Erased);
        Assert.Empty(FilesWith(disk.Path));
    }

    public void Dispose() => _folder.Dispose();

    private RecordErasure Erasing(OpenRecord record) => new(record.Store, _folder.Path, TimeProvider.System);

    private static async Task KeepAsync(OpenRecord record, string id, string bowler)
    {
        var shot = Scenario.Shot() with { Note = $"{bowler} slipped" };
        await Scenario.KeepAsync(record.Store, Scenario.Setup(id, bowler), shot, shot, shot);
        await record.Store.AppendAsync(id, Scenario.Ended(5), Cancelled);
    }

    private List<string> FilesWith(string? folder = null) =>
        [.. Directory.GetFiles(folder ?? _folder.Path).Where(file => !file.EndsWith(".lock", StringComparison.Ordinal)).Where(file =>
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return Encoding.Latin1.GetString(bytes.ToArray()).Contains(Word, StringComparison.OrdinalIgnoreCase);
        })];
}
