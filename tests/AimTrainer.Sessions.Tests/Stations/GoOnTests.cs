using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

public class GoOnTests
{
    private const string Staircase =
        """ "until": { "shots": 30 }, "sizing": { "kind": "staircase", "hits": 2, "misses": 1, "stepBoards": 0.5 }, "feedback": { "when": "summary", "everyShots": 4 } """;

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task GoOn_AfterAStop_IsTheSameSession()
    {
        await using var before = await InterruptedAsync();
        await using var after = new RunningStation(1, before.Store);

        Assert.Equal(new StationReply.Kept(null), await after.Station.GoOnAsync(before.Store.Session(), Cancelled));

        Assert.Equal(Json(before.Station.Snapshot), Json(after.Station.Snapshot));
        Assert.IsType<StationReply.TakenBefore>(await after.ThrowAsync(10, "shot-1"));
        Assert.IsType<StationReply.Kept>(await after.ThrowAsync(10, "shot-99"));
    }

    [Fact]
    public async Task GoOn_WithTheSameShots_EndsAsTheUninterruptedSession()
    {
        await using var interrupted = await InterruptedAsync();
        await using var resumed = new RunningStation(1, interrupted.Store);
        await resumed.Station.GoOnAsync(interrupted.Store.Session(), Cancelled);
        await using var whole = await InterruptedAsync(stop: false);
        for (var i = 0; i < 15; i++)
        {
            await resumed.ThrowAsync(10 + (i % 3), $"more-{i}");
            await whole.ThrowAsync(10 + (i % 3), $"more-{i}");
        }

        Assert.Equal(Json(whole.Store.Log()), Json(resumed.Store.Log()));
    }

    [Fact]
    public async Task GoOn_EventsWereWorkedOutOtherwise_IsRefused()
    {
        await using var before = await InterruptedAsync();
        var log = before.Store.Log().ToList();
        var graded = (SessionEvent.ShotGraded)log[2].Events[0];
        log[2] = log[2] with { Events = [graded with { Shot = graded.Shot with { Points = 7 } }, .. log[2].Events.Skip(1)] };
        before.Store.Replace("session-1", log);

        var refused = await RefusedAsync(before.Store);

        Assert.Contains("step 3 was worked out otherwise", refused, StringComparison.Ordinal);
    }

    [Fact]
    public async Task GoOn_AStepIsMissing_IsRefused()
    {
        await using var before = await InterruptedAsync();
        before.Store.Replace("session-1", before.Store.Log().Where(entry => entry.Sequence != 4));

        Assert.Contains("step 4 of its log is missing", await RefusedAsync(before.Store), StringComparison.Ordinal);
    }

    [Fact]
    public async Task GoOn_SessionIsOver_TakesCorrectionsOnly()
    {
        await using var before = await InterruptedAsync(stop: false);
        await before.FollowAsync(new SessionInput.End(Sample.Start, "enough"));
        await using var after = new RunningStation(1, before.Store);

        Assert.Equal(new StationReply.Kept(null), await after.Station.GoOnAsync(before.Store.Session(), Cancelled));

        Assert.Equal(Json(before.Station.Snapshot), Json(after.Station.Snapshot));
        Assert.IsType<StationReply.Refused>(await after.ThrowAsync(10));
        var points = after.Station.Snapshot.Points;
        Assert.IsType<StationReply.Kept>(await after.FollowAsync(new SessionInput.CorrectShot(Sample.Start, 1, Sample.Shot(16))));
        Assert.Equal((points - 3, 8), (after.Station.Snapshot.Points, after.Station.Snapshot.Summary!.PerTarget[0].Graded));
    }

    [Fact]
    public async Task GoOn_SessionOfAnotherStation_IsRefused()
    {
        await using var before = await InterruptedAsync();
        await using var other = new RunningStation(2, before.Store);

        var refused = Assert.IsType<StationReply.Refused>(await other.Station.GoOnAsync(before.Store.Session(), Cancelled));

        Assert.Equal("session session-1 is of station 1: go on with it there", refused.Why);
    }

    [Fact]
    public async Task GoOn_DrillIsNotReadAnyMore_IsRefusedAndTheStationWorks()
    {
        await using var before = await InterruptedAsync();
        await using var after = new RunningStation(1, before.Store);

        var refused = Assert.IsType<StationReply.Refused>(
            await after.Station.GoOnAsync(before.Store.Session() with { DrillJson = "{}" }, Cancelled));

        Assert.Contains("does not read its drill", refused.Why, StringComparison.Ordinal);
        Assert.Equal(new StationReply.Kept(null), await after.Station.StartAsync(Sample.Setup("session-2"), Sample.Shots(3), Cancelled));
    }

    private static async Task<string> RefusedAsync(MemoryStore store)
    {
        await using var after = new RunningStation(1, store);
        var refused = Assert.IsType<StationReply.Refused>(await after.Station.GoOnAsync(store.Session(), Cancelled));
        Assert.Null(after.Station.Snapshot.Phase);
        return refused.Why;
    }

    private static async Task<RunningStation> InterruptedAsync(bool stop = true)
    {
        var running = await RunningStation.BegunAsync(Sample.Drill(Staircase, Staircase));
        for (var i = 1; i <= 9; i++)
        {
            await running.ThrowAsync(9 + (i % 4), $"shot-{i}");
        }

        await running.FollowAsync(new SessionInput.VoidShot(Sample.Start, 2, "foul"));
        await running.FollowAsync(new SessionInput.Pause(Sample.Start));
        await running.ThrowAsync(10, "in the pause");
        await running.FollowAsync(new SessionInput.Resume(Sample.Start));
        if (stop)
        {
            await running.StopAsync();
        }

        return running;
    }

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, DomainJson.Options);
}
