using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public abstract class ProjectionContract(TestRecord record) : IDisposable
{
    private readonly TestRecord _record = record;

    [Fact]
    public async Task AppendAsync_ShotGraded_KeepsEveryValueInItsColumn()
    {
        var shot = Shot(reading =>
        {
            reading.AddCrossing(15, 10.26);
            reading.AddCrossing(42, 6.5);
            reading.LaydownBoard = 14.5;
            reading.BreakpointBoard = 6.25;
            reading.BreakpointFeet = 41;
            reading.EntryBoard = 17.1;
            reading.EntryAngleDegrees = 4.5;
            reading.SpeedMilesPerHour = 16.9;
            reading.SpeedPlace = SpeedPlace.Average;
            reading.RevsRpm = 310;
            reading.AxisRotationDegrees = 45;
            reading.AxisTiltDegrees = 12;
            reading.Pins = 9;
            reading.Ball = "Red";
        });
        await KeepAsync(_record.Store, Setup(), shot);

        using var tables = _record.Tables();
        var row = await tables.GradedShots.Include(kept => kept.Targets).Include(kept => kept.Session).SingleAsync(Cancel);
        Assert.Equal("s1", row.Session!.Id);
        Assert.Equal((1, 0, "second arrow", BlockKind.Training), (row.Number, row.Run, row.BlockName, row.BlockKind));
        Assert.Equal(("line", 0, (bool?)true, (bool?)null, (string?)null), (row.Aim, row.Place, row.Held, row.Comparable, row.VoidReason));
        Assert.Equal(Start.AddMinutes(1), row.At);
        Assert.Equal((14.5, 6.25, 41, 17.1, 4.5), (row.LaydownBoard, row.BreakpointBoard, row.BreakpointFeet, row.EntryBoard, row.EntryAngleDegrees));
        Assert.Equal((16.9, SpeedPlace.Average, 310, 45, 12, 9),
            (row.SpeedMph, row.SpeedAt, row.RevsRpm, row.AxisRotationDegrees, row.AxisTiltDegrees, row.Pins));
        var angle = LaunchAngles.Of(shot, Lane)!.Value;
        Assert.Equal((angle.Angle.Value, true), (row.LaunchAngleDegrees, row.LaunchAngleComputed));
        Assert.Equal(Json(shot), row.ShotJson);
        Assert.False(row.Simulated);
        Assert.Equal("Red", await tables.Balls.Where(ball => ball.Id == row.BallId).Select(ball => ball.Name).SingleAsync(Cancel));

        // The default bands, from the issue: within a quarter of the 3 boards is "centre", 3 points; within a half "hit", 2.
        var (near, far) = (row.Targets.Single(target => target.Position == 0), row.Targets.Single(target => target.Position == 1));
        Assert.Equal(("arrows", 15.0, 10.0, 3.0), (near.Name, near.DistanceFeet, near.CentreBoard, near.WidthBoards));
        Assert.Equal((CrossingKind.Measured, 10.26, 0.26, "centre", true, 3),
            (near.Crossing, near.CrossingBoard, near.MissBoards, near.Grade, near.Held, near.Points));
        Assert.Equal((6.5, -0.5, 3), (far.CrossingBoard, far.MissBoards, far.Points));
        Assert.Equal(6, row.Points);
    }

    [Fact]
    public async Task AppendAsync_CrossingUnknown_KeepsNullsAndNoGrade()
    {
        await KeepAsync(_record.Store, Setup(), Shot(laydown: null, mph: null));
        using var tables = _record.Tables();
        var row = await tables.GradedShots.SingleAsync(Cancel);
        Assert.Null(row.Held);
        Assert.Equal(((double?)null, (SpeedPlace?)null, (double?)null, (double?)null), (row.SpeedMph, row.SpeedAt, row.LaydownBoard, row.LaunchAngleDegrees));
        var far = await tables.ShotTargets.SingleAsync(target => target.Position == 1, Cancel);
        Assert.Equal((CrossingKind.Unknown, (double?)null, (double?)null, (string?)null, (bool?)null, (int?)null),
            (far.Crossing, far.CrossingBoard, far.MissBoards, far.Grade, far.Held, far.Points));
    }

    [Fact]
    public async Task AppendAsync_ShotVoided_TakesItOutOfTheTotalsAndKeepsTheShot()
    {
        await KeepAsync(_record.Store, Setup(), Shot(10), Shot(10), Shot(10));
        Assert.Equal((3, 9), await TotalsAsync());

        await _record.Store.AppendAsync("s1", new LogEntry(
            5, new SessionInput.VoidShot(Start, 2, "slipped"), [new SessionEvent.ShotVoided(2, "slipped")]), Cancel);

        Assert.Equal((2, 6), await TotalsAsync());
        using var tables = _record.Tables();
        Assert.Equal([null, "slipped", null], await tables.GradedShots.OrderBy(shot => shot.Number).Select(shot => shot.VoidReason).ToListAsync(Cancel));
    }

    [Fact]
    public async Task AppendAsync_ShotCorrected_ReplacesItsRowAndKeepsBothInTheLog()
    {
        await KeepAsync(_record.Store, Setup(), Shot(10), Shot(10));
        var before = Graded(2, Shot(10));
        var after = Graded(2, Shot(14, ball: "RED"), new Aim("line", [Line.Targets[0]]));
        await _record.Store.AppendAsync("s1", new LogEntry(
            4, new SessionInput.CorrectShot(Start, 2, after.Shot), [new SessionEvent.ShotCorrected(before, after)]), Cancel);

        Assert.Equal((2, 3), await TotalsAsync());
        using var tables = _record.Tables();
        var row = await tables.GradedShots.Include(shot => shot.Targets).SingleAsync(shot => shot.Number == 2, Cancel);
        Assert.Equal(("second arrow", BlockKind.Training, 0, false), (row.BlockName, row.BlockKind, row.Points, row.Held));
        var target = Assert.Single(row.Targets);
        Assert.Equal((14.0, 4.0, "miss"), (target.CrossingBoard, target.MissBoards, target.Grade));
        Assert.Equal("RED", await tables.Balls.Where(ball => ball.Id == row.BallId).Select(ball => ball.Name).SingleAsync(Cancel));
        var kept = Assert.IsType<SessionEvent.ShotCorrected>((await LogAsync(_record.Store, "s1"))[^1].Events[0]);
        Assert.Equal((before, after), (kept.Before, kept.After));
    }

    [Fact]
    public async Task AppendAsync_VoidAndShotInOneStep_CountsOnce()
    {
        await KeepAsync(_record.Store, Setup(), Shot(10));
        await _record.Store.AppendAsync("s1", new LogEntry(
            3, new SessionInput.VoidShot(Start, 1, "foul"),
            [new SessionEvent.ShotVoided(1, "foul"), .. Thrown(3, Graded(2, Shot(10))).Events]), Cancel);
        Assert.Equal((1, 3), await TotalsAsync());
    }

    [Fact]
    public async Task AppendAsync_BlockBegan_NamesTheBlockOfTheShotsAfterIt()
    {
        await KeepAsync(_record.Store, Setup(), Shot());
        await _record.Store.AppendAsync("s1", new LogEntry(
            3, new SessionInput.ShotThrown(Start, Shot()),
            [
                new SessionEvent.ShotGraded(Graded(2, Shot()), [], Told.Nothing),
                new SessionEvent.BlockEnded(0, "second arrow", BlockEndReason.Shots, []),
                new SessionEvent.BlockBegan(1, 1, "retention", BlockKind.Test, 1),
            ]), Cancel);
        await _record.Store.AppendAsync("s1", Thrown(4, Graded(3, Shot(), run: 1)), Cancel);

        using var tables = _record.Tables();
        Assert.Equal(
            [("second arrow", BlockKind.Training), ("second arrow", BlockKind.Training), ("retention", BlockKind.Test)],
            (await tables.GradedShots.OrderBy(shot => shot.Number).ToListAsync(Cancel)).Select(shot => (shot.BlockName!, shot.BlockKind!.Value)));
        var session = await tables.Sessions.SingleAsync(Cancel);
        Assert.Equal((1, "retention", BlockKind.Test), (session.Run, session.BlockName, session.BlockKind));
    }

    [Fact]
    public async Task AppendAsync_ShotOfARunThatNeverBegan_IsKeptWithoutABlock()
    {
        await _record.Store.CreateAsync(Setup(), Drill(), Cancel);
        await _record.Store.AppendAsync("s1", Thrown(1, Graded(1, Shot())), Cancel);
        using var tables = _record.Tables();
        Assert.Null((await tables.GradedShots.SingleAsync(Cancel)).BlockName);
    }

    [Fact]
    public async Task AppendAsync_SessionEnded_KeepsWhen()
    {
        await KeepAsync(_record.Store, Setup());
        await _record.Store.AppendAsync("s1", Ended(2), Cancel);
        using var tables = _record.Tables();
        Assert.Equal(Start.AddHours(1), (await tables.Sessions.SingleAsync(Cancel)).EndedAt);
    }

    [Fact]
    public async Task AppendAsync_ShotsThatNameBalls_KeepsEachBallOnceForItsBowler()
    {
        await KeepAsync(_record.Store, Setup("s1") with { Ball = null }, Shot(ball: "Red"), Shot(ball: "RED"), Shot());
        await KeepAsync(_record.Store, Setup("s2", "Bo") with { Ball = "red" }, Shot());
        using var tables = _record.Tables();
        Assert.Equal(["Red", "red"], await tables.Balls.OrderBy(ball => ball.Id).Select(ball => ball.Name).ToListAsync(Cancel));
        var balls = await tables.GradedShots.OrderBy(shot => shot.SessionKey).ThenBy(shot => shot.Number).Select(shot => shot.BallId).ToListAsync(Cancel);
        Assert.Equal(balls[0], balls[1]);
        Assert.Null(balls[2]);
        Assert.NotEqual(balls[0], balls[3]);
    }

    public void Dispose()
    {
        _record.Dispose();
        GC.SuppressFinalize(this);
    }

    private async Task<(int Shots, int Points)> TotalsAsync()
    {
        var listing = Assert.Single(await _record.Store.ListAsync(new SessionFilter(), Cancel));
        return (listing.Shots, listing.Points);
    }
}
