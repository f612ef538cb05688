using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

/// <summary>A session that a station really ran: what is read back leads to the same events, byte for byte.</summary>
public abstract class ReplayContract(TestRecord record) : IDisposable
{
    // Two sizings that carry what they learned from shot to shot: whatever a store would change shows in the next width.
    private const string Script = """
        {
          "format": 1, "id": "replayed", "name": "Replayed", "purpose": "Tests the store.", "whoFor": "Whoever builds it.", "aboutMinutes": 5,
          "cautions": ["Nobody walks past the foul line: the lane beyond it is oiled and slippery."],
          "blocks": [
            {
              "name": "Fitted", "kind": "training", "aims": [{ "name": "second arrow", "mark": "arrow 2" }], "order": { "kind": "serial" },
              "until": { "shots": 4 }, "sizing": { "kind": "scatter", "goalHitRate": 0.75 }
            },
            {
              "name": "Weighted", "kind": "training", "aims": [{ "name": "third arrow", "mark": "arrow 3", "widthBoards": 3 }], "order": { "kind": "serial" },
              "until": { "shots": 9 }, "sizing": { "kind": "weighted", "goalHitRate": 0.75, "narrowerOctaves": 0.125 }
            }
          ]
        }
        """;

    private readonly TestRecord _record = record;

    [Fact]
    public async Task Log_OfAStationsSession_LeadsToTheSameEventsAgain()
    {
        var said = await RunAsync(_record.Store);
        _record.Reopen();
        var stored = (await _record.Store.FindAsync("s1", Cancel))!;
        var read = await LogAsync(_record.Store, "s1");
        Assert.Equal(said, read.Select(Json));

        var opening = SessionCore.Open(stored.Setup, Fitted().Script);
        var state = opening.State!;
        foreach (var entry in read)
        {
            var step = SessionCore.Apply(state, entry.Input);
            Assert.Equal(Json(entry.Events), Json(step.Events));
            state = step.State;
        }
    }

    [Fact]
    public async Task Log_OfAStationsSession_IsThatOfAnotherStore()
    {
        using var other = new SqliteTestRecord();
        Assert.Equal(await RunAsync(other.Store), await RunAsync(_record.Store));
        Assert.Equal((await LogAsync(other.Store, "s1")).Select(Json), (await LogAsync(_record.Store, "s1")).Select(Json));
    }

    public void Dispose()
    {
        _record.Dispose();
        GC.SuppressFinalize(this);
    }

    private static DrillSource Fitted()
    {
        var bytes = Encoding.UTF8.GetBytes(Script);
        var read = DrillReader.Read("test", bytes);
        return new DrillSource(read.Value ?? throw new InvalidOperationException(read.Problems.ToString()), DrillHash.Of(bytes), Script);
    }

    private static SessionSetup Wish() => Setup(drill: Fitted()) with { Lane = LaneProfileReader.Default };

    private static async Task<List<string>> RunAsync(ISessionStore store)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        var station = new Station(7, store, TimeProvider.System);
        var running = station.RunAsync(stop.Token);
        Assert.IsType<StationReply.Kept>(await station.StartAsync(Wish(), Fitted(), Cancel));
        var said = new List<string>();
        List<SessionInput> inputs = [new SessionInput.Begin(Start)];
        for (var i = 0; i < 8; i++)
        {
            inputs.Add(new SessionInput.ShotThrown(Start.AddTicks(1 + (i * 10_000_019L)), Shot(9.5 + (i * 0.17), laydown: 14 - (i * 0.01), mph: 17 + (i * 0.1))));
        }

        inputs.Insert(5, new SessionInput.VoidShot(Start.AddSeconds(9), 2, "slipped"));
        inputs.Insert(7, new SessionInput.TakeNote(Start.AddSeconds(9), "\u00e9 \ud83c\udfb3 \"quoted\""));
        inputs.Add(new SessionInput.End(Start.AddHours(1), "done"));
        foreach (var input in inputs)
        {
            var reply = await station.FollowAsync(input, Cancel);
            said.Add(Json(Assert.IsType<StationReply.Kept>(reply).Entry!));
        }

        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => running);
        return said;
    }
}
