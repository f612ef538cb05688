using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store.Tests;

/// <summary>What is erased is gone: from every table, from the file's bytes, from the log beside it.</summary>
public sealed class ErasureTests
{
    private const string Word = "Xanthippe";

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task EraseBowler_AmongOthers_LeavesNoRowAndNoByteOfHer()
    {
        using var folder = new TemporaryFolder();
        using var record = new OpenRecord(folder.Path);
        await KeepAsync(record, "hers", $"{Word} Lee");
        await KeepAsync(record, "his", "Ben");
        Assert.NotEmpty(FilesWith(folder.Path, Word));

        var erased = (await new SqliteErasure(record.Folder, TimeProvider.System).EraseBowlerAsync($" {Word.ToUpperInvariant()}  lee", Cancelled))!;

        Assert.Equal(["hers"], erased.Sessions);
        Assert.Empty(FilesWith(folder.Path, Word));
        Assert.Null(await record.Store.FindAsync("hers", Cancelled));
        using (var tables = record.Tables())
        {
            Assert.Equal((1, 1, 1), (tables.Bowlers.Count(), tables.Sessions.Count(), tables.Balls.Count()));
            Assert.Equal(3, tables.GradedShots.Count());
            Assert.Equal(6, tables.ShotTargets.Count());
            Assert.Equal(3, tables.LogSteps.Count());
        }

        // The writer goes on as if nothing had been: a next step of the other session is kept.
        await record.Store.AppendAsync("his", Step(4), Cancelled);
        Assert.Equal(4, (await Scenario.LogAsync(record.Store, "his")).Count);
        await Assert.ThrowsAsync<InvalidOperationException>(() => record.Store.AppendAsync("hers", Step(4), Cancelled));
    }

    [Fact]
    public async Task EraseBowler_OfWhomNothingIsKept_IsNull()
    {
        using var folder = new TemporaryFolder();
        using var record = new OpenRecord(folder.Path);

        Assert.Null(await new SqliteErasure(record.Folder, TimeProvider.System).EraseBowlerAsync("Nobody", Cancelled));
        Assert.Empty(new Erasures(folder.Path).All());
    }

    [Fact]
    public async Task EraseBowler_TombstoneHasIdsAndNoName_AndAnOldCopyIsErasedAgain()
    {
        using var folder = new TemporaryFolder();
        var backup = Path.Combine(folder.Path, "old.db");
        using (var record = new OpenRecord(folder.Path))
        {
            await KeepAsync(record, "hers", $"{Word} Lee");
            await RecordBackup.BackupAsync(record.Folder, backup, false, Cancelled);
            var erased = (await new SqliteErasure(record.Folder, TimeProvider.System).EraseBowlerAsync($"{Word} Lee", Cancelled))!;
            Assert.Equal([backup], erased.CopiesLeft);
        }

        Assert.DoesNotContain(Word, await File.ReadAllTextAsync(Path.Combine(folder.Path, "erasures.jsonl"), Cancelled), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(["hers"], Assert.Single(new Erasures(folder.Path).All()).Sessions);
        using (var held = DataFolder.Open(folder.Path))
        {
            await RecordBackup.RestoreAsync(held, backup, TimeProvider.System, Cancelled);
            Assert.Equal(1, new SqliteErasure(held, TimeProvider.System).EraseAgain());
        }

        File.Delete(backup);
        foreach (var old in Directory.GetFiles(folder.Path, "*.before-restore-*"))
        {
            File.Delete(old);
        }

        Assert.Empty(FilesWith(folder.Path, Word));
    }

    [Fact]
    public async Task EraseBefore_RetentionTime_TakesOldSessionsAndBowlersWithNoneLeft()
    {
        using var folder = new TemporaryFolder();
        using var record = new OpenRecord(folder.Path);
        await KeepAsync(record, "old", $"{Word} Lee");
        await KeepAsync(record, "old-too", "Ben");
        await record.Store.CreateAsync(Scenario.Setup("new", "Ben") with { At = Scenario.Start.AddYears(1) }, Scenario.Drill(), Cancelled);

        var erased = await new SqliteErasure(record.Folder, TimeProvider.System).EraseBeforeAsync(Scenario.Start.AddMonths(1), Cancelled);

        Assert.Equal(["old", "old-too"], erased.Sessions.Order());
        Assert.Empty(FilesWith(folder.Path, Word));
        using var tables = record.Tables();
        Assert.Equal(["Ben"], await tables.Bowlers.Select(bowler => bowler.Name).ToListAsync(Cancelled));
        Assert.Equal(["new"], await tables.Sessions.Select(session => session.Id).ToListAsync(Cancelled));
    }

    [Fact]
    public void Statements_OfABowler_NameEveryTableThatHangsOnHer()
    {
        using var connection = new SqliteConnection("Data Source=:memory:");
        connection.Open();
        using var record = SqliteDatabase.ContextOver(connection);
        var statements = ErasureStatements.For(record, typeof(BowlerRow), "1 = 1");
        var tables = record.Model.GetEntityTypes().Where(entity => entity.ClrType != typeof(DrillRow)).Select(entity => Microsoft.EntityFrameworkCore.RelationalEntityTypeExtensions.GetTableName(entity)!);

        Assert.All(tables, table => Assert.Contains(statements, statement => statement.StartsWith($"DELETE FROM \"{table}\" ", StringComparison.Ordinal)));
        Assert.Equal("DELETE FROM \"bowlers\" WHERE 1 = 1", statements[^1]);
    }

    [Fact]
    public async Task EraseBowler_WhileShotsComeIn_LosesNoneOfTheOthers()
    {
        using var folder = new TemporaryFolder();
        using var record = new OpenRecord(folder.Path);
        await KeepAsync(record, "hers", $"{Word} Lee");
        await KeepAsync(record, "his", "Ben");
        var erasing = new SqliteErasure(record.Folder, TimeProvider.System).EraseBowlerAsync($"{Word} Lee", Cancelled);
        for (var number = 4; number <= 60; number++)
        {
            await record.Store.AppendAsync("his", Step(number), Cancelled);
        }

        Assert.NotNull(await erasing);
        Assert.Equal(60, (await Scenario.LogAsync(record.Store, "his")).Count);
        Assert.Null(await record.Store.FindAsync("hers", Cancelled));
    }

    private static async Task KeepAsync(OpenRecord record, string id, string bowler)
    {
        await record.Store.CreateAsync(Scenario.Setup(id, bowler), Scenario.Drill(), Cancelled);
        for (var number = 1; number <= 3; number++)
        {
            await record.Store.AppendAsync(id, Step(number, bowler), Cancelled);
        }
    }

    private static LogEntry Step(int number, string note = "")
    {
        var shot = Scenario.Shot() with { Note = note.Length == 0 ? null : $"{note} slipped" };
        return Scenario.Thrown(number, Scenario.Graded(number, shot));
    }

    private static List<string> FilesWith(string folder, string word) =>
        [.. Directory.GetFiles(folder).Where(file => !file.EndsWith(".lock", StringComparison.Ordinal)).Where(file =>
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return Encoding.Latin1.GetString(bytes.ToArray()).Contains(word, StringComparison.OrdinalIgnoreCase);
        })];
}
