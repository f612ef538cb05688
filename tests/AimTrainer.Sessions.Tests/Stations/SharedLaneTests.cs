using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Sessions.Tests;

/// <summary>Several bowlers on one lane: each shot to whoever's turn it is, nothing lost by a kill, nothing twice.</summary>
public sealed class SharedLaneTests
{
    private static readonly string[] Names = ["Ann", "Ben", "Cas", "Dee"];

    [Fact]
    public async Task Throw_TwoBowlers_EachShotGoesToTheOneWhoseTurnItIs()
    {
        await using var lane = await SharedLane.OpenAsync("Ann", "Ben");
        foreach (var id in (string[])["a1", "b1", "a2"])
        {
            Assert.IsType<StationReply.Kept>(await lane.ThrowAsync(id));
        }

        Assert.Equal(["a1", "a2"], lane.ShotsOf("Ann"));
        Assert.Equal(["b1"], lane.ShotsOf("Ben"));
        Assert.Equal("Ben", lane.Snapshot.Setup!.Bowler);
        Assert.Equal(("Ann", 2), (lane.Snapshot.Turns!.Last!.Bowler, lane.Snapshot.Turns.Last.Number));
    }

    [Fact]
    public async Task Throw_TheSameShotAgain_WhenTheTurnIsAnothers_IsTakenOnce()
    {
        await using var lane = await SharedLane.OpenAsync("Ann", "Ben");
        await lane.ThrowAsync("a1");

        Assert.Equal(new StationReply.TakenBefore("Ann"), await lane.ThrowAsync("a1"));
        Assert.Empty(lane.ShotsOf("Ben"));
        Assert.Equal("Ben", lane.Snapshot.Turns!.Now!.Bowler);
    }

    [Fact]
    public async Task Throw_NamedForSomebodyElse_IsLeftOutBecauseAnotherTargetWasShown()
    {
        await using var lane = await SharedLane.OpenAsync("Ann", "Ben");

        var reply = Assert.IsType<StationReply.Refused>(await lane.ThrowAsync("b1", "Ben"));

        Assert.Contains("it is the turn of Ann", reply.Why, StringComparison.Ordinal);
        Assert.Empty(lane.ShotsOf("Ben"));
    }

    [Fact]
    public async Task Void_OfTheOneWhoThrewLast_ReachesHerThoughTheTurnIsAnothers()
    {
        await using var lane = await SharedLane.OpenAsync("Ann", "Ben");
        await lane.ThrowAsync("a1");
        var last = lane.Snapshot.Turns!.Last!;

        var reply = await lane.Station.FollowAsync(new SessionInput.VoidShot(Sample.Start, last.Number, "taken back"), last.SessionId, RunningStation.Cancelled);

        Assert.Equal("Ann", Assert.IsType<StationReply.Kept>(reply).SessionId);
        Assert.Contains(lane.Log("Ann"), entry => entry.Input is SessionInput.VoidShot);
        Assert.DoesNotContain(lane.Log("Ben"), entry => entry.Input is SessionInput.VoidShot);
    }

    [Fact]
    public async Task Join_ToABowlerAlone_MakesThemTakeTurnsAndKeepsHerShots()
    {
        await using var lane = new SharedLane();
        await lane.Station.StartAsync(lane.SetupOf("Ann"), Sample.Shots(20), RunningStation.Cancelled);
        await lane.BeginAsync("Ann");
        await lane.ThrowAsync("a1");
        await lane.JoinAsync("Ben");
        await lane.ThrowAsync("a2");
        await lane.ThrowAsync("b1");

        Assert.Equal(["a1", "a2"], lane.ShotsOf("Ann"));
        Assert.Equal(["b1"], lane.ShotsOf("Ben"));
    }

    [Fact]
    public async Task Turn_SeenBeforeAnotherChange_IsRefused()
    {
        await using var lane = await SharedLane.OpenAsync("Ann", "Ben");
        var seen = lane.Snapshot.Turns!.Number;
        Assert.IsType<StationReply.Kept>(await lane.Station.TurnAsync(new TurnChange.Skip(), seen, RunningStation.Cancelled));

        Assert.IsType<StationReply.Refused>(await lane.Station.TurnAsync(new TurnChange.Skip(), seen, RunningStation.Cancelled));
        Assert.Equal("Ben", lane.Snapshot.Turns!.Now!.Bowler);
    }

    [Fact]
    public async Task Turn_ThatCannotBeKept_ChangesNothing()
    {
        await using var lane = await SharedLane.OpenAsync("Ann", "Ben");
        lane.Lineups.Failure = new StoreUnavailableException("the disk is full");

        Assert.IsType<StationReply.NotKept>(await lane.Station.TurnAsync(new TurnChange.Skip(), null, RunningStation.Cancelled));
        Assert.Equal("Ann", lane.Snapshot.Turns!.Now!.Bowler);
        Assert.IsType<StationReply.Kept>(await lane.ThrowAsync("a1"));
    }

    [Fact]
    public async Task Start_OnASharedLane_IsRefusedUntilAllAreDone()
    {
        await using var lane = await SharedLane.OpenAsync("Ann", "Ben");
        await lane.EndAsync("Ann");
        Assert.IsType<StationReply.Refused>(await lane.Station.StartAsync(lane.SetupOf("Cas"), Sample.Shots(3), RunningStation.Cancelled));
        await lane.EndAsync("Ben");

        Assert.IsType<StationReply.Kept>(await lane.Station.StartAsync(lane.SetupOf("Cas"), Sample.Shots(3), RunningStation.Cancelled));
        Assert.Null(lane.Snapshot.Turns);
        Assert.Null(lane.Lineups.Find(1));
    }

    [Fact]
    public async Task Names_OnASharedLane_AreInitialsAndSomebodyWithTheSameGetsANumber()
    {
        await using var lane = await SharedLane.OpenAsync("Ann Lee", "Abe Low");

        Assert.Equal(["A. L.", "A. L. 2"], lane.Snapshot.Turns!.Places.Select(place => place.ScreenName));
        Assert.Equal("A. L.", lane.Snapshot.ScreenName);
    }

    [Fact]
    public async Task Forget_ABowlerWhoIsDone_IsNotOnTheLaneAnyMore()
    {
        await using var lane = await SharedLane.OpenAsync("Ann", "Ben");
        Assert.IsType<StationReply.Refused>(await lane.Station.ForgetAsync("Ann", RunningStation.Cancelled));
        await lane.EndAsync("Ann");

        Assert.IsType<StationReply.Kept>(await lane.Station.ForgetAsync("ann", RunningStation.Cancelled));
        Assert.Equal(["Ben"], lane.Snapshot.Turns!.Places.Select(place => place.Bowler));
        Assert.DoesNotContain(lane.Lineups.Find(1)!.Places, place => place.Bowler == "Ann");
        Assert.IsType<StationReply.Kept>(await lane.ThrowAsync("b1"));
    }

    /// <summary>Late, leaving, swapping, skipping, ending, shots sent twice, and kills: no shot lost, none twice, none to the wrong bowler.</summary>
    [Fact]
    public async Task RandomPlay_WithKills_NoShotIsLostOrSomebodyElses() =>
        await Gen.Int[0, 13].Select(Gen.Int[0, 3], Gen.Int[0, 3], (what, one, other) => (what, one, other)).List[1, 60].SampleAsync(async steps =>
        {
            await using var lane = await SharedLane.OpenAsync("Ann", "Ben");
            lane.Lineups.LosesWhatIsNotDurable = steps.Count % 2 == 0;
            var expected = Names.ToDictionary(name => name, _ => new List<string>());
            var thrown = new List<string>();
            foreach (var (what, one, other) in steps)
            {
                var turns = lane.Snapshot.Turns;
                switch (what)
                {
                    case < 6 when turns?.Now is { } now:
                        var id = $"shot-{thrown.Count}";
                        if (await lane.ThrowAsync(id, one == 0 ? now.SessionId : null) is StationReply.Kept)
                        {
                            expected[now.Bowler!].Add(id);
                            thrown.Add(id);
                        }

                        break;
                    case 6 when turns is not null:
                        // A new order after all were done knows nothing of the old one, as a new session knows nothing of the one before.
                        var before = turns.Places.SelectMany(place => expected[place.Bowler!]).ToList();
                        if (before.Count > 0)
                        {
                            Assert.IsType<StationReply.TakenBefore>(await lane.ThrowAsync(before[one * 17 % before.Count]));
                        }

                        break;
                    case 7 when lane.Has(Names[one]) && turns is not null:
                        await lane.EndAsync(Names[one]);
                        break;
                    case 8 when !lane.Has(Names[one]):
                        await lane.JoinAsync(Names[one]);
                        break;
                    case 9:
                        await lane.Station.TurnAsync(new TurnChange.Leave(Names[one]), null, RunningStation.Cancelled);
                        break;
                    case 10:
                        await lane.Station.TurnAsync(new TurnChange.Return(Names[one]), null, RunningStation.Cancelled);
                        break;
                    case 11:
                        await lane.Station.TurnAsync(new TurnChange.Swap(Names[one], Names[other]), null, RunningStation.Cancelled);
                        break;
                    case 12:
                        await lane.Station.TurnAsync(other == 0 ? new TurnChange.Skip() : new TurnChange.Give(Names[one]), null, RunningStation.Cancelled);
                        break;
                    case 13:
                        var stood = lane.Snapshot.Turns?.Places.Select(place => (place.Bowler, place.Status, place.IsNow, place.Shots)).ToList();
                        if (await lane.KillAndGoOnAsync())
                        {
                            Assert.Equal(stood, lane.Snapshot.Turns!.Places.Select(place => (place.Bowler, place.Status, place.IsNow, place.Shots)).ToList());
                        }

                        break;
                }
            }

            foreach (var name in Names.Where(lane.Has))
            {
                Assert.Equal(expected[name], lane.ShotsOf(name));
            }
        }, iter: 60);
}
