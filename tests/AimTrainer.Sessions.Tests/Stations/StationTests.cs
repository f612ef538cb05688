using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

public class StationTests
{
    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Throw_StoreIsSlow_IsAcknowledgedAndShownOnlyWhenKept()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(5));
        running.Store.Hold();

        var reply = running.ThrowAsync(10);
        await running.Store.Reached.Task.WaitAsync(Cancelled);
        Assert.False(reply.IsCompleted);
        Assert.Equal(0, running.Station.Snapshot.Throws);

        running.Store.Release();
        var kept = Assert.IsType<StationReply.Kept>(await reply);
        Assert.Equal(running.Store.Log()[^1], kept.Entry);
        Assert.Equal(1, running.Station.Snapshot.Throws);
    }

    [Fact]
    public async Task Throw_StoreFails_NothingCountsAndTheSameShotIsTakenAfterwards()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(5));
        var before = running.Station.Snapshot;
        running.Store.Failure = new StoreUnavailableException("the disk is full: free some space");

        Assert.Equal(new StationReply.NotKept("the disk is full: free some space"), await running.ThrowAsync(10, "shot-1"));
        Assert.Same(before, running.Station.Snapshot);

        running.Store.Failure = null;
        Assert.IsType<StationReply.Kept>(await running.ThrowAsync(10, "shot-1"));
        Assert.Equal(1, running.Station.Snapshot.Throws);
    }

    [Fact]
    public async Task Throw_StoreBreaksUnexpectedly_SenderGetsItAndTheLaneGoesOn()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(5));
        running.Store.Failure = new InvalidOperationException("a bug");

        await Assert.ThrowsAsync<InvalidOperationException>(() => running.ThrowAsync(10));

        running.Store.Failure = null;
        Assert.IsType<StationReply.Kept>(await running.ThrowAsync(10));
    }

    [Fact]
    public async Task Throw_SameIdTwice_IsTakenOnce()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(5));
        await running.ThrowAsync(10, "shot-1");

        Assert.IsType<StationReply.TakenBefore>(await running.ThrowAsync(12, "shot-1"));
        Assert.IsType<StationReply.Kept>(await running.ThrowAsync(10, "shot-2"));
        Assert.Equal(2, running.Station.Snapshot.Throws);
    }

    [Fact]
    public async Task Throw_NoSession_IsRefused()
    {
        await using var running = new RunningStation();

        Assert.Equal(new StationReply.Refused("station 1 has no session: start one first"), await running.ThrowAsync(10));
    }

    [Fact]
    public async Task Start_SecondSession_IsRefusedUntilTheFirstIsOver()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(5));

        Assert.IsType<StationReply.Refused>(await running.Station.StartAsync(Sample.Setup("session-2"), Sample.Shots(5), Cancelled));
        await running.FollowAsync(new SessionInput.End(Sample.Start, "enough"));
        Assert.Equal(new StationReply.Kept(null), await running.Station.StartAsync(Sample.Setup("session-2"), Sample.Shots(5), Cancelled));
        Assert.Equal((SessionPhase.Waiting, 0L), (running.Station.Snapshot.Phase, running.Station.Snapshot.Version));
    }

    [Fact]
    public async Task Start_IdIsTaken_CallerGetsTheException()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(1));
        await running.ThrowAsync(10);

        await Assert.ThrowsAsync<InvalidOperationException>(() => running.Station.StartAsync(Sample.Setup(), Sample.Shots(5), Cancelled));
    }

    [Fact]
    public async Task Start_StoreFails_ThereIsNoSession()
    {
        await using var running = new RunningStation();
        running.Store.Failure = new StoreUnavailableException("read-only: choose another folder");

        Assert.IsType<StationReply.NotKept>(await running.Station.StartAsync(Sample.Setup(), Sample.Shots(5), Cancelled));
        Assert.Null(running.Station.Snapshot.Phase);
    }

    [Fact]
    public async Task Start_DrillDoesNotFitTheSetting_IsRefusedWithWhatIsMissing()
    {
        var drill = Sample.Shots(5);
        var block = drill.Script.Blocks[0];
        var aim = new AimPlan("exit", [block.Aims[0].Targets[0] with { Place = new TargetPlace.AtPatternExit(null, BoardOffset.Zero) }]);
        var script = drill.Script with { Blocks = [block with { Aims = [aim] }] };
        await using var running = new RunningStation();

        var refused = Assert.IsType<StationReply.Refused>(await running.Station.StartAsync(Sample.Setup(), drill with { Script = script }, Cancelled));

        Assert.Contains("give the session's pattern length", refused.Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Start_SetUpForAnotherStation_Throws()
    {
        await using var running = new RunningStation();

        await Assert.ThrowsAsync<ArgumentException>(() => running.Station.StartAsync(Sample.Setup(station: 2), Sample.Shots(5), Cancelled));
    }

    [Fact]
    public async Task Throw_MoreSendersThanTheDoorHolds_TheyWaitAndNoneIsLost()
    {
        const int Senders = Station.Capacity + 200;
        await using var running = await RunningStation.BegunAsync(Sample.Shots(10_000));
        running.Store.Hold();

        var replies = Enumerable.Range(0, Senders).Select(i => Task.Run(() => running.ThrowAsync(10, $"shot-{i}"))).ToList();
        await running.Store.Reached.Task.WaitAsync(Cancelled);
        Assert.DoesNotContain(replies, reply => reply.IsCompleted);
        running.Store.Release();
        var answered = await Task.WhenAll(replies);

        Assert.All(answered, reply => Assert.IsType<StationReply.Kept>(reply));
        var kept = running.Store.Log().Select(entry => entry.Input).OfType<SessionInput.ShotThrown>().Select(thrown => thrown.Shot.Id);
        Assert.Equal(Senders, kept.Distinct().Count());
        Assert.Equal(Senders, running.Station.Snapshot.Throws);
    }

    [Fact]
    public async Task Stop_EverybodyIsAnswered()
    {
        var running = await RunningStation.BegunAsync(Sample.Shots(10_000));
        running.Store.Hold();
        var inWork = running.ThrowAsync(10);
        await running.Store.Reached.Task.WaitAsync(Cancelled);
        var waiting = Enumerable.Range(0, Station.Capacity + 20).Select(_ => running.ThrowAsync(10)).ToList();

        var stopping = running.StopAsync();
        running.Store.Release();
        await stopping;

        // What the store had in hand is kept, and said so; nothing else is.
        Assert.IsType<StationReply.Kept>(await inWork);
        Assert.All(await Task.WhenAll(waiting), reply => Assert.IsType<StationReply.NotKept>(reply));
        Assert.Equal(2, running.Store.Log().Count);
        Assert.IsType<StationReply.NotKept>(await running.ThrowAsync(10));
        await running.DisposeAsync();
    }

    [Fact]
    public async Task Watch_SlowReader_GetsTheNewestAndBlocksNobody()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(100));
        await using var watcher = running.Station.WatchAsync(Cancelled).GetAsyncEnumerator(Cancelled);
        Assert.True(await watcher.MoveNextAsync());
        Assert.Equal(0, watcher.Current.Throws);

        for (var i = 0; i < 50; i++)
        {
            await running.ThrowAsync(10);
        }

        Assert.True(await watcher.MoveNextAsync());
        Assert.Equal(50, watcher.Current.Throws);
    }

    [Fact]
    public async Task Watch_StationStops_EndsForOldAndNewWatchers()
    {
        var running = await RunningStation.BegunAsync(Sample.Shots(100));
        await using var watcher = running.Station.WatchAsync(Cancelled).GetAsyncEnumerator(Cancelled);
        Assert.True(await watcher.MoveNextAsync());
        await running.StopAsync();

        Assert.False(await watcher.MoveNextAsync());
        Assert.Single(await running.Station.WatchAsync(Cancelled).ToListAsync(Cancelled));
        await running.DisposeAsync();
    }

    [Fact]
    public async Task Snapshot_FiguresFollowVoidsAndCorrections()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Shots(50));
        foreach (var board in new[] { 10.0, 13, 10, 11 })
        {
            await running.ThrowAsync(board);
        }

        await running.FollowAsync(new SessionInput.VoidShot(Sample.Start, 3, "foul"));
        await running.FollowAsync(new SessionInput.CorrectShot(Sample.Start, 2, Sample.Shot(10)));

        // 3 points each for shots 1 and 2 (corrected), 2 for shot 4, one board inside.
        var picture = running.Station.Snapshot;
        Assert.Equal((3, 8, 5), (picture.Throws, picture.Points, picture.NextNumber));
        Assert.Equal((3, 3, 8), (picture.Summary!.PerTarget[0].Shots, picture.Summary.PerTarget[0].Hits, picture.Summary.Points));
        Assert.Equal([4, 3, 2, 1], picture.LastShots.Select(shot => shot.Number));
        Assert.Equal(picture.Shown, running.Store.Log()[^1].Events.OfType<SessionEvent.AimShown>().Last().Aim);
    }

    [Fact]
    public async Task Snapshot_LastShotOfABlock_WhatWasToldIsStillThere()
    {
        const string Summary = """ "until": { "shots": 2 }, "feedback": { "when": "summary", "everyShots": 5 } """;
        await using var running = await RunningStation.BegunAsync(Sample.Drill(Summary, Summary));
        await running.ThrowAsync(10);
        await running.ThrowAsync(10);
        Assert.Equal(2, running.Station.Snapshot.BlockNumber);
        Assert.Equal([1, 2], running.Station.Snapshot.Told.Results.Select(told => told.Number));

        await running.FollowAsync(new SessionInput.Repeat(Sample.Start, Scope.Block));

        Assert.Empty(running.Station.Snapshot.Told.Results);
    }

    [Fact]
    public async Task Snapshot_BlockEnded_KeepsItsFigures()
    {
        await using var running = await RunningStation.BegunAsync(Sample.Drill(""" "until": { "shots": 2 } """, """ "until": { "shots": 2 } """));
        await running.ThrowAsync(10);
        Assert.Null(running.Station.Snapshot.Finished);
        await running.ThrowAsync(15);

        var now = running.Station.Snapshot;
        Assert.Equal(2, now.BlockNumber);
        Assert.Equal((1, "block 1", BlockEndReason.Shots), (now.Finished!.Number, now.Finished.Block.Name, now.Finished.Why));
        Assert.Equal((2, 1), (now.Finished.Summary.PerTarget[0].Graded, now.Finished.Summary.PerTarget[0].Hits));
    }

    [Theory]
    [InlineData("true", true)]
    [InlineData("false", false)]
    public async Task Snapshot_NextAim_IsGivenOnlyWhereTheBlockShowsIt(string showsNext, bool given)
    {
        await using var running = await RunningStation.BegunAsync(Sample.Drill($$""" "showsNext": {{showsNext}}, "until": { "shots": 5 } """));
        Assert.Equal(given, running.Station.Snapshot.Next is not null);
    }
}
