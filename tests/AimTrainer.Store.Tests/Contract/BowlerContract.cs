using AimTrainer.Domain;
using AimTrainer.Sessions;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public abstract class BowlerContract(TestRecord record) : IDisposable
{
    private readonly TestRecord _record = record;

    [Fact]
    public async Task ListBowlersAsync_Several_GivesThoseWhoThrewLastFirst()
    {
        await KeepAsync(_record.Store, Setup("s1", "Ann Lee") with { Hand = Hand.Right, Ball = "plain" }, Shot(), Shot());
        await KeepAsync(_record.Store, Setup("s2", "ann lee") with { At = Start.AddDays(2), Hand = Hand.Left, Ball = "blue" }, Shot());
        await KeepAsync(_record.Store, Setup("s3", "Bo") with { At = Start.AddDays(1), Simulated = true });

        Assert.Equal(
            [
                new BowlerListing("Ann Lee", Hand.Left, 2, 3, Start.AddDays(2), false, ["blue", "plain"]),
                new BowlerListing("Bo", Hand.Right, 1, 0, Start.AddDays(1), true, []),
            ],
            (await _record.Store.ListBowlersAsync(10, Cancel)).AsEnumerable().Select(line => line with { Balls = line.Name == "Bo" ? [] : line.Balls }));
        Assert.Equal("Ann Lee", Assert.Single((await _record.Store.ListBowlersAsync(1, Cancel)).AsEnumerable()).Name);
    }

    [Fact]
    public async Task FindBowlerAsync_Unknown_IsNull() => Assert.Null(await _record.Store.FindBowlerAsync("Ann Lee", Cancel));

    [Theory]
    [InlineData("\u00c5sa \u00d6berg", "\u00e5SA \u00f6BERG")]
    [InlineData("Ann Lee", " ann\tLEE ")]
    public async Task FindBowlerAsync_AnotherCase_IsTheSameBowlerAsFirstWritten(string written, string asked)
    {
        await _record.Store.CreateAsync(Setup("s1", written), Drill(), Cancel);
        await _record.Store.CreateAsync(Setup("s2", asked), Drill(), Cancel);
        Assert.Equal(written, (await _record.Store.FindBowlerAsync(asked, Cancel))!.Name);
    }

    [Fact]
    public async Task FindBowlerAsync_FourMeasured_TellsNothing()
    {
        await KeepAsync(_record.Store, Setup(), [.. Enumerable.Repeat(Shot(), 4)]);
        Assert.Equal(new Baseline(), (await _record.Store.FindBowlerAsync("Ann Lee", Cancel))!.Baseline);
    }

    [Fact]
    public async Task FindBowlerAsync_FiveAndMore_TellsTheMedians()
    {
        // The middle of 1, 2, 3, 4, 100 is 3; between 3 and 4 lies 3.5: worked out by hand.
        int[] odd = [4, 100, 1, 3, 2];
        await KeepAsync(_record.Store, Setup(), [.. odd.Select(i => Shot(reading =>
        {
            reading.SpeedMilesPerHour = 15 + (i / 10.0);
            reading.SpeedPlace = SpeedPlace.Pins;
            reading.RevsRpm = 300 + i;
            reading.LaydownBoard = 14 + (i / 100.0);
            reading.LaunchAngleDegrees = i / 10.0;
            reading.BreakpointBoard = 6 + (i / 100.0);
            reading.BreakpointFeet = i == 100 ? null : 40 + i;
        })), Shot(reading => reading.RevsRpm = 304)]);

        var found = (await _record.Store.FindBowlerAsync("Ann Lee", Cancel))!;
        Assert.Equal(new BallSpeed(MilesPerHour.FromMilesPerHour(15.3), SpeedPlace.Pins), found.Baseline.Speed);
        Assert.Equal(Rpm.FromRpm(303.5), found.Baseline.Revs);
        Assert.Equal(Board.FromBoards(14.03), found.Baseline.Laydown);
        Assert.Equal(Degrees.FromDegrees(0.3), found.Baseline.LaunchAngle);
        Assert.Null(found.Breakpoint);
    }

    [Fact]
    public async Task FindBowlerAsync_BreakpointsWithDistance_TellsTheMedians()
    {
        await KeepAsync(_record.Store, Setup(), [.. Enumerable.Range(1, 5).Select(i => Shot(reading =>
        {
            reading.BreakpointBoard = 5 + i;
            reading.BreakpointFeet = 45 - i;
        }))]);
        Assert.Equal(new Breakpoint(Board.FromBoards(8), Feet.FromFeet(42)), (await _record.Store.FindBowlerAsync("Ann Lee", Cancel))!.Breakpoint);
    }

    [Fact]
    public async Task FindBowlerAsync_SpeedsFromTwoPlaces_TellsTheMoreFrequentOnly()
    {
        await KeepAsync(
            _record.Store, Setup(),
            [.. Enumerable.Repeat(Shot(mph: 18, place: SpeedPlace.Release), 5), .. Enumerable.Repeat(Shot(mph: 15.5, place: SpeedPlace.Pins), 6)]);
        Assert.Equal(
            new BallSpeed(MilesPerHour.FromMilesPerHour(15.5), SpeedPlace.Pins), (await _record.Store.FindBowlerAsync("Ann Lee", Cancel))!.Baseline.Speed);
    }

    [Fact]
    public async Task FindBowlerAsync_VoidedSimulatedAndOtherHand_AreLeftOut()
    {
        await KeepAsync(_record.Store, Setup("left") with { Hand = Hand.Left }, [.. Enumerable.Repeat(Shot(laydown: 30), 9)]);
        await KeepAsync(_record.Store, Setup("right") with { At = Start.AddDays(1) }, [.. Enumerable.Repeat(Shot(laydown: 14), 5), Shot(laydown: 35)]);
        await KeepAsync(
            _record.Store, Setup("simulated") with { At = Start.AddDays(2), Simulated = true, Hand = Hand.Left },
            [.. Enumerable.Repeat(Shot(laydown: 20), 9)]);
        await KeepAsync(
            _record.Store, Setup("mixed") with { At = Start.AddDays(1) },
            [.. Enumerable.Repeat(Shot(reading => { reading.LaydownBoard = 21; reading.Source = ShotSource.Simulated; }), 9)]);
        await _record.Store.AppendAsync("right", new LogEntry(
            8, new SessionInput.VoidShot(Start, 1, "slipped"), [new SessionEvent.ShotVoided(1, "slipped")]), Cancel);

        // Five are left: 14 four times, and 35.
        var found = (await _record.Store.FindBowlerAsync("Ann Lee", Cancel))!;
        Assert.Equal(Hand.Right, found.Hand);
        Assert.Equal(Board.FromBoards(14), found.Baseline.Laydown);

        await _record.Store.AppendAsync("right", new LogEntry(
            9, new SessionInput.VoidShot(Start, 2, "slipped"), [new SessionEvent.ShotVoided(2, "slipped")]), Cancel);
        Assert.Null((await _record.Store.FindBowlerAsync("Ann Lee", Cancel))!.Baseline.Laydown);
    }

    [Fact]
    public async Task FindBowlerAsync_MoreThanTwoHundredShots_LooksAtTheNewest()
    {
        // Of the 200 looked at, 101 are new: one more than the old ones.
        await KeepAsync(
            _record.Store, Setup(), [.. Enumerable.Repeat(Shot(laydown: 30), 250), .. Enumerable.Repeat(Shot(laydown: 12), 101)]);
        Assert.Equal(Board.FromBoards(12), (await _record.Store.FindBowlerAsync("Ann Lee", Cancel))!.Baseline.Laydown);
    }

    [Fact]
    public async Task FindBowlerAsync_OnlySimulatedSessions_IsKnownWithoutAUsualThrow()
    {
        await KeepAsync(_record.Store, Setup("demo", "Demo bowler") with { Simulated = true, Hand = Hand.Left }, [.. Enumerable.Repeat(Shot(), 20)]);
        var found = (await _record.Store.FindBowlerAsync("demo bowler", Cancel))!;
        Assert.Equal((Hand.Left, new Baseline(), null), (found.Hand, found.Baseline, found.Breakpoint));
    }

    public void Dispose()
    {
        _record.Dispose();
        GC.SuppressFinalize(this);
    }
}
