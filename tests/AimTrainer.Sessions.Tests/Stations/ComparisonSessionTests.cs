using System.Text;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

/// <summary>A comparison of balls on a station: what its pictures say, that it goes on after a stop, and that it replays to the byte.</summary>
public class ComparisonSessionTests
{
    private const string Text =
        """
        { "format": 1, "id": "drill", "name": "Drill", "purpose": "A test.", "whoFor": "Tests.", "aboutMinutes": 5, "blocks": [{
          "name": "balls", "kind": "comparison",
          "aims": [{ "name": "outside", "board": 10, "feet": 15, "widthBoards": 3 }, { "name": "inside", "board": 20, "feet": 15, "widthBoards": 3 }],
          "order": { "kind": "compare", "balls": ["reference", "other"], "throwing": "mirrored", "goodThrowsEach": 3, "checkEvery": 4 } }] }
        """;

    private static readonly ValueList<ChosenBall> Balls = [new ChosenBall("reference", "Old"), new ChosenBall("other", "New")];

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Snapshot_OfAComparison_SaysWhoThrowsAndTheLastShotOfEach()
    {
        await using var running = await BegunAsync();
        Assert.Equal(("Old", false, 1, 2), Turn(running.Station.Snapshot));
        Assert.Empty(running.Station.Snapshot.LastOfEach);
        await running.ThrowAsync(10, "a");
        await running.ThrowAsync(11, "b");
        await running.ThrowAsync(12, "c");

        // After Old, New, New the fourth is due as a check, which is Old's turn as well.
        Assert.Equal(("Old", true, 1, 2), Turn(running.Station.Snapshot));
        Assert.Equal([1, 3], running.Station.Snapshot.LastOfEach.Select(shot => shot.Number));
        await running.FollowAsync(new SessionInput.VoidShot(Sample.Start, 3, "foul"));
        Assert.Equal([1, 2], running.Station.Snapshot.LastOfEach.Select(shot => shot.Number));
    }

    [Fact]
    public async Task Snapshot_LineMovedOn_KeepsTheWaysUntilTheFirstShotThere()
    {
        await using var running = await BegunAsync();
        for (var i = 0; running.Station.Snapshot.Turn!.Line == 1; i++)
        {
            await running.ThrowAsync(10, $"shot-{i}");
        }

        Assert.Equal(["outside", "outside"], running.Station.Snapshot.LastOfEach.Select(shot => shot.Aim));
        await running.ThrowAsync(20, "next");
        Assert.Equal(["inside"], running.Station.Snapshot.LastOfEach.Select(shot => shot.Aim));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(9)]
    public async Task GoOn_AfterAStop_IsTheSameSessionAndEndsAsTheWholeOne(int before)
    {
        await using var whole = await BegunAsync();
        await using var interrupted = await BegunAsync();
        for (var i = 0; i < before; i++)
        {
            await ThrowAsync(interrupted, i);
        }

        await interrupted.StopAsync();
        await using var resumed = new RunningStation(1, interrupted.Store);
        Assert.Equal(new StationReply.Kept(null), await resumed.Station.GoOnAsync(interrupted.Store.Session(), Cancelled));
        Assert.Equal(Json(interrupted.Station.Snapshot), Json(resumed.Station.Snapshot));
        for (var i = 0; i < 20; i++)
        {
            await ThrowAsync(whole, i);
            if (i >= before)
            {
                await ThrowAsync(resumed, i);
            }
        }

        Assert.Equal(SessionPhase.Ended, whole.Station.Snapshot.Phase);
        Assert.Equal(Json(whole.Store.Log()), Json(resumed.Store.Log()));
    }

    [Fact]
    public void Replay_SameShots_SameEventsToTheByte()
    {
        var items = Enumerable.Range(0, 20).Select(i => (FeedItem)new FeedItem.ShotRead(ShotOf(i), null, null, i + 1)).ToList();

        Assert.Equal(Replayed(items), Replayed(items));
        Assert.Contains("\"isCheck\":true", Replayed(items), StringComparison.Ordinal);
    }

    private static string Replayed(List<FeedItem> items)
    {
        var events = new List<SessionEvent>();
        var state = SessionCore.Open(Sample.Setup() with { Balls = Balls }, Drill().Script).State!;
        var outcome = Replay.Run(state, items, (_, happened) => events.AddRange(happened), problem => Assert.Fail(problem.ToString()));
        Assert.True(outcome.Complete);
        return Json(events);
    }

    private static async Task ThrowAsync(RunningStation running, int number) => await running.Station.ThrowAsync(ShotOf(number), Cancelled);

    /// <summary>Now and then a ball is named: the other one, or one that is not compared.</summary>
    private static Shot ShotOf(int number) => Sample.Shot(10 + (number % 3), $"shot-{number}") with { Ball = number switch { 2 => "old", 5 => "Third", _ => null } };

    private static async Task<RunningStation> BegunAsync()
    {
        var running = new RunningStation();
        Assert.Equal(new StationReply.Kept(null), await running.Station.StartAsync(Sample.Setup() with { Balls = Balls }, Drill(), Cancelled));
        Assert.IsType<StationReply.Kept>(await running.FollowAsync(new SessionInput.Begin(Sample.Start)));
        return running;
    }

    private static DrillSource Drill()
    {
        var utf8 = Encoding.UTF8.GetBytes(Text);
        return new DrillSource(DrillReader.Read("test", utf8).Value!, DrillHash.Of(utf8), Text);
    }

    private static (string, bool, int, int) Turn(SessionSnapshot snapshot) => (snapshot.Turn!.Due.Name, snapshot.Turn.IsCheck, snapshot.Turn.Line, snapshot.Turn.Lines);

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, DomainJson.Options);
}
