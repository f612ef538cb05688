using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using Microsoft.Data.Sqlite;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

/// <summary>Before an update changes the tables of a record, a copy of it lies beside it.</summary>
public sealed class UpdateBackupTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string File => _folder.File("aimtrainer.db");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Open_OlderRecord_IsCopiedBeforeAnythingIsChangedAlsoWhenTheUpdateFails()
    {
        using (var record = new OpenRecord(_folder.Path))
        {
            await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        }

        // It looks older by one change, whose tables are there already: so the update comes, and fails.
        Change("DELETE FROM __EFMigrationsHistory WHERE MigrationId = (SELECT max(MigrationId) FROM __EFMigrationsHistory)");
        var refused = Assert.Throws<StoreUnavailableException>(() => new OpenRecord(_folder.Path));
        var copy = Assert.Single(Copies());
        Assert.Contains($"it was copied to {copy} first", refused.Message, StringComparison.Ordinal);
        Assert.Equal(1L, Sessions(copy));

        // A second try makes a second copy, and leaves the first.
        Assert.Throws<StoreUnavailableException>(() => new OpenRecord(_folder.Path));
        Assert.Equal(2, Copies().Length);
        Assert.Equal(1L, Sessions(copy));
    }

    [Fact]
    public async Task Open_NewOrCurrentRecord_IsNotCopied()
    {
        using (var record = new OpenRecord(_folder.Path))
        {
            await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        }

        using (new OpenRecord(_folder.Path))
        {
            Assert.Empty(Copies());
        }
    }

    [Fact]
    public async Task Health_OfARecord_TellsItsVersionAndItsDamage()
    {
        using (var record = new OpenRecord(_folder.Path))
        {
            await record.Store.CreateAsync(Setup(), Drill(), Cancel);
        }

        using var folder = DataFolder.OpenForReading(_folder.Path);
        var whole = RecordHealth.Of(folder);
        Assert.Equal((true, RecordSchema.Known[^1], 0), (whole.IsCurrent, whole.Version, whole.Damage.Count));
        Assert.NotNull(whole.NewestSession);

        Change("DELETE FROM __EFMigrationsHistory WHERE MigrationId = (SELECT max(MigrationId) FROM __EFMigrationsHistory)");
        Assert.False(RecordHealth.Of(folder).IsCurrent);
    }

    private string[] Copies() => Directory.GetFiles(_folder.Path, "aimtrainer.db.before-update-from-*");

    private static long Sessions(string file)
    {
        using var connection = new SqliteConnection($"Data Source={file};Mode=ReadOnly;Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM sessions";
        return (long)command.ExecuteScalar()!;
    }

    private void Change(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={File};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
