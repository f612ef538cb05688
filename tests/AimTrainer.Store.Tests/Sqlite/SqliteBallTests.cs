using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.DependencyInjection;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class SqliteBallTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly TemporaryFolder _elsewhere = new();

    [Fact]
    public async Task RestoreAsync_Backup_HoldsTheBallsAndTheirSurfaces()
    {
        var backup = _elsewhere.File("backup.db");
        var before = ValueList.Create<BallRecord>([]);
        using (var record = new OpenRecord(_folder.Path))
        {
            await KeepAsync(record.Store, Setup(), Shot());
            await record.Store.KeepBallAsync(BallContract.Described, Cancel);
            await record.Store.AddSurfaceAsync("Ann Lee", "Blue One", new BallSurface(Start, BallSurfaceKind.Work, "500 grit", null, null, null, null), Cancel);
            before = await record.Store.ListBallsAsync(null, Cancel);
            await RecordBackup.BackupAsync(record.Folder, backup, false, Cancel);
        }

        using (var folder = DataFolder.Open(_elsewhere.File("other")))
        {
            await RecordBackup.RestoreAsync(folder, backup, TimeProvider.System, Cancel);
        }

        using var restored = new OpenRecord(_elsewhere.File("other"));
        Assert.Equal(before, await restored.Store.ListBallsAsync(null, Cancel));
        Assert.Single(before[0].Surfaces);
    }

    [Fact]
    public async Task Open_RecordOfTheFirstVersion_KeepsItsBalls()
    {
        using (DataFolder.Open(_folder.Path))
        {
            using var connection = SqliteDatabase.OpenForWriting(_folder.File("aimtrainer.db"));
            SqliteDatabase.Execute(connection, $"PRAGMA application_id = {SqliteDatabase.ApplicationId}");
            using (var context = SqliteDatabase.ContextOver(connection))
            {
                await context.GetInfrastructure().GetRequiredService<IMigrator>().MigrateAsync(RecordSchema.Known[0], Cancel);
            }

            SqliteDatabase.Execute(connection, "INSERT INTO bowlers (name, key) VALUES ('Ann Lee', 'ANN LEE'); INSERT INTO balls (bowler_id, name, key) VALUES (1, 'Blue', 'BLUE')");
        }

        using var record = new OpenRecord(_folder.Path);
        Assert.Equal(new BallDetails { Bowler = "Ann Lee", Name = "Blue" }, Assert.Single(await record.Store.ListBallsAsync(null, Cancel)).Details);
    }

    public void Dispose()
    {
        _folder.Dispose();
        _elsewhere.Dispose();
    }
}
