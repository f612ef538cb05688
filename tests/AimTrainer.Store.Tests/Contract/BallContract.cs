using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

/// <summary>What is known of balls, whichever database holds it.</summary>
public abstract class BallContract(TestRecord record) : IDisposable
{
    private readonly TestRecord _record = record;

    internal static BallDetails Described { get; } = new()
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
        await _record.Store.KeepBallAsync(Described, Cancel);
        await _record.Store.KeepBallAsync(new BallDetails { Bowler = "Ann Lee", Name = "Plain" }, Cancel);

        var balls = await _record.Store.ListBallsAsync(null, Cancel);
        Assert.Equal([Described, new BallDetails { Bowler = "Ann Lee", Name = "Plain" }], balls.Select(ball => ball.Details));
        Assert.Equal(new BallRecord(Described, 0, null, []), balls[0]);
    }

    [Fact]
    public async Task KeepBallAsync_OtherCapitals_IsTheSameBallUnderItsFirstName()
    {
        await _record.Store.KeepBallAsync(Described, Cancel);
        await _record.Store.KeepBallAsync(Described with { Bowler = "ann  LEE", Name = "blue  ONE", Surface = null }, Cancel);

        var ball = Assert.Single(await _record.Store.ListBallsAsync("ANN LEE", Cancel));
        Assert.Equal(Described with { Surface = null }, ball.Details);
    }

    [Fact]
    public async Task ListBallsAsync_NamedInSessionsAndShots_CountsTheShotsThatCount()
    {
        await KeepAsync(_record.Store, Setup(), Shot(), Shot(ball: "BLUE one"), Shot(ball: "Red"));
        await _record.Store.AppendAsync("s1", new LogEntry(5, new SessionInput.VoidShot(Start, 1, "foul"), [new SessionEvent.ShotVoided(1, "foul")]), Cancel);

        var balls = await _record.Store.ListBallsAsync("Ann Lee", Cancel);
        Assert.Equal([("Red", 1), ("blue one", 1)], balls.Select(ball => (ball.Details.Name, ball.Shots)));
        Assert.Equal(Start.AddMinutes(2), (await _record.Store.FindBallAsync("ann lee", "Blue One", Cancel))!.LastThrownAt);
        Assert.Empty(await _record.Store.ListBallsAsync("Somebody", Cancel));
    }

    [Fact]
    public async Task CreateAsync_ComparisonSession_KeepsItsBalls()
    {
        var setup = Setup() with { Balls = [new ChosenBall("reference", "Blue ONE"), new ChosenBall("other", "Green")] };
        await _record.Store.CreateAsync(setup, Drill(), Cancel);

        Assert.Equal(["Green", "blue one"], (await _record.Store.ListBallsAsync(null, Cancel)).Select(ball => ball.Details.Name));
        Assert.Equal(setup.Balls, (await _record.Store.FindAsync("s1", Cancel))!.Setup.Balls);
    }

    [Fact]
    public async Task AppendAsync_ShotOfAComparison_IsOfTheBallThatWasThrown()
    {
        await KeepAsync(_record.Store, Setup());
        var shot = Graded(1, Shot()) with { Compared = new ThrownBall { Due = "Green", Ball = "Green", Role = "other", IsNamed = false, CheckWasDue = false } };
        await _record.Store.AppendAsync("s1", Thrown(2, shot), Cancel);

        Assert.Equal(1, (await _record.Store.FindBallAsync("Ann Lee", "green", Cancel))!.Shots);
    }

    [Fact]
    public async Task AddSurfaceAsync_WorkAndScan_KeepTheHistoryAndCountGamesAnew()
    {
        await _record.Store.KeepBallAsync(Described, Cancel);
        var scan = new BallSurface(Start, BallSurfaceKind.Scan, null, 31.5, "\u00b5in Ra", null, "by the edge of the track");
        var work = new BallSurface(Start.AddHours(1), BallSurfaceKind.Work, "1000 grit", null, null, null, null);
        Assert.True(await _record.Store.AddSurfaceAsync("ann lee", "BLUE ONE", scan, Cancel));
        Assert.True(await _record.Store.AddSurfaceAsync("Ann Lee", "Blue One", work, Cancel));

        var ball = (await _record.Store.FindBallAsync("Ann Lee", "Blue One", Cancel))!;
        Assert.Equal([work with { Games = 12 }, scan with { Games = 12 }], ball.Surfaces);
        Assert.Equal(("1000 grit", 0), (ball.Details.Surface, ball.Details.GamesSinceSurfaceWork));
    }

    [Fact]
    public async Task AddSurfaceAsync_UnknownBall_SaysSoAndKeepsNothing()
    {
        Assert.False(await _record.Store.AddSurfaceAsync("Ann Lee", "Blue", new BallSurface(Start, BallSurfaceKind.Work, "500 grit", null, null, null, null), Cancel));

        using var tables = _record.Tables();
        Assert.Equal((0, 0, 0), (await tables.Bowlers.CountAsync(Cancel), await tables.Balls.CountAsync(Cancel), await tables.BallSurfaces.CountAsync(Cancel)));
    }

    public void Dispose()
    {
        _record.Dispose();
        GC.SuppressFinalize(this);
    }
}
