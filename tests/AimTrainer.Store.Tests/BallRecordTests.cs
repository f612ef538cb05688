using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.DependencyInjection;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class BallRecordTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly TemporaryFolder _elsewhere = new();

    private static BallDetails Described { get; } = new()
    {
        Bowler = "Ann Lee",
        Name = "Blue One",
        Surface = "2000 grit",
        WeightPounds = 15,
        RadiusOfGyration = Inches.FromInches(2.487),
        Differential = Inches.FromInches(0.048),
        Layout = "pin above the ring finger",
        GamesSinceSurfaceWork = 12,
    };

    [Fact]
    public async Task KeepBallAsync_EverythingAndNothing_ComesBackAsGiven()
    {
        using var record = new OpenRecord(_folder.Path);
        await record.Store.KeepBallAsync(Described, Cancel);
        await record.Store.KeepBallAsync(new BallDetails { Bowler = "Ann Lee", Name = "Plain" }, Cancel);

        var balls = await record.Store.ListBallsAsync(null, Cancel);
        Assert.Equal([Described, new BallDetails { Bowler = "Ann Lee", Name = "Plain" }], balls.Select(ball => ball.Details));
        Assert.Equal(new BallRecord(Described, 0, null, []), balls[0]);
    }

    [Fact]
    public async Task KeepBallAsync_OtherCapitals_IsTheSameBallUnderItsFirstName()
    {
        using var record = new OpenRecord(_folder.Path);
        await record.Store.KeepBallAsync(Described, Cancel);
        await record.Store.KeepBallAsync(Described with { Bowler = "ann  LEE", Name = "blue  ONE", Surface = null }, Cancel);

        var ball = Assert.Single(await record.Store.ListBallsAsync("ANN LEE", Cancel));
        Assert.Equal(Described with { Surface = null }, ball.Details);
    }

    [Fact]
    public async Task ListBallsAsync_NamedInSessionsAndShots_CountsTheShotsThatCount()
    {
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record.Store, Setup(), Shot(), Shot(ball: "BLUE one"), Shot(ball: "Red"));
        await record.Store.AppendAsync("s1", new LogEntry(5, new SessionInput.VoidShot(Start, 1, "foul"), [new SessionEvent.ShotVoided(1, "foul")]), Cancel);

        var balls = await record.Store.ListBallsAsync("Ann Lee", Cancel);
        Assert.Equal([("Red", 1), ("blue one", 1)], balls.Select(ball => (ball.Details.Name, ball.Shots)));
        Assert.Equal(Start.AddMinutes(2), (await record.Store.FindBallAsync("ann lee", "Blue One", Cancel))!.LastThrownAt);
        Assert.Empty(await record.Store.ListBallsAsync("Somebody", Cancel));
    }

    [Fact]
    public async Task CreateAsync_ComparisonSession_KeepsItsBalls()
    {
        using var record = new OpenRecord(_folder.Path);
        var setup = Setup() with { Balls = [new ChosenBall("reference", "Blue ONE"), new ChosenBall("other", "Green")] };
        await record.Store.CreateAsync(setup, Drill(), Cancel);

        Assert.Equal(["Green", "blue one"], (await record.Store.ListBallsAsync(null, Cancel)).Select(ball => ball.Details.Name));
        Assert.Equal(setup.Balls, (await record.Store.FindAsync("s1", Cancel))!.Setup.Balls);
    }

    [Fact]
    public async Task AppendAsync_ShotOfAComparison_IsOfTheBallThatWasThrown()
    {
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record.Store, Setup());
        var shot = Graded(1, Shot()) with { Compared = new ThrownBall { Due = "Green", Ball = "Green", Role = "other", IsNamed = false, CheckWasDue = false } };
        await record.Store.AppendAsync("s1", Thrown(2, shot), Cancel);

        Assert.Equal(1, (await record.Store.FindBallAsync("Ann Lee", "green", Cancel))!.Shots);
    }

    [Fact]
    public async Task AddSurfaceAsync_WorkAndScan_KeepTheHistoryAndCountGamesAnew()
    {
        using var record = new OpenRecord(_folder.Path);
        await record.Store.KeepBallAsync(Described, Cancel);
        var scan = new BallSurface(Start, BallSurfaceKind.Scan, null, 31.5, "\u00b5in Ra", null, "by the edge of the track");
        var work = new BallSurface(Start.AddHours(1), BallSurfaceKind.Work, "1000 grit", null, null, null, null);
        Assert.True(await record.Store.AddSurfaceAsync("ann lee", "BLUE ONE", scan, Cancel));
        Assert.True(await record.Store.AddSurfaceAsync("Ann Lee", "Blue One", work, Cancel));

        var ball = (await record.Store.FindBallAsync("Ann Lee", "Blue One", Cancel))!;
        Assert.Equal([work with { Games = 12 }, scan with { Games = 12 }], ball.Surfaces);
        Assert.Equal(("1000 grit", 0), (ball.Details.Surface, ball.Details.GamesSinceSurfaceWork));
    }

    [Fact]
    public async Task AddSurfaceAsync_UnknownBall_SaysSoAndKeepsNothing()
    {
        using var record = new OpenRecord(_folder.Path);
        Assert.False(await record.Store.AddSurfaceAsync("Ann Lee", "Blue", new BallSurface(Start, BallSurfaceKind.Work, "500 grit", null, null, null, null), Cancel));

        using var tables = record.Tables();
        Assert.Equal((0, 0, 0), (await tables.Bowlers.CountAsync(Cancel), await tables.Balls.CountAsync(Cancel), await tables.BallSurfaces.CountAsync(Cancel)));
    }

    [Fact]
    public async Task RestoreAsync_Backup_HoldsTheBallsAndTheirSurfaces()
    {
        var backup = _elsewhere.File("backup.db");
        var before = ValueList.Create<BallRecord>([]);
        using (var record = new OpenRecord(_folder.Path))
        {
            await KeepAsync(record.Store, Setup(), Shot());
            await record.Store.KeepBallAsync(Described, Cancel);
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
