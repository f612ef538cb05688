using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

/// <summary>A lane that bowlers share; each bowler's session has the bowler's name as its id.</summary>
internal sealed class SharedLane : IAsyncDisposable
{
    private readonly MemoryStore _store = new();
    private readonly HashSet<string> _bowlers = [];
    private CancellationTokenSource _stop = new();
    private Task _running;

    public SharedLane()
    {
        Station = New();
        _running = Station.RunAsync(_stop.Token);
    }

    public MemoryLineups Lineups { get; } = new();

    public Station Station { get; private set; }

    public SessionSnapshot Snapshot => Station.Snapshot;

    public static async Task<SharedLane> OpenAsync(params string[] bowlers)
    {
        var lane = new SharedLane();
        foreach (var bowler in bowlers)
        {
            await lane.JoinAsync(bowler);
        }

        return lane;
    }

    public bool Has(string bowler) => _bowlers.Contains(bowler);

    public SessionSetup SetupOf(string bowler)
    {
        _bowlers.Add(bowler);
        return Sample.Setup(bowler) with { Bowler = bowler };
    }

    public async Task JoinAsync(string bowler)
    {
        Assert.IsType<StationReply.Kept>(await Station.JoinAsync(SetupOf(bowler), Sample.Shots(20), RunningStation.Cancelled));
        await BeginAsync(bowler);
    }

    public async Task BeginAsync(string bowler) =>
        Assert.IsType<StationReply.Kept>(await Station.FollowAsync(new SessionInput.Begin(Sample.Start), bowler, RunningStation.Cancelled));

    public Task EndAsync(string bowler) => Station.FollowAsync(new SessionInput.End(Sample.Start, "done"), bowler, RunningStation.Cancelled);

    public Task<StationReply> ThrowAsync(string id, string? session = null) => Station.ThrowAsync(Sample.Shot(10, id), session, null, RunningStation.Cancelled);

    public IReadOnlyList<LogEntry> Log(string bowler) => _store.Log(bowler);

    public IEnumerable<string> ShotsOf(string bowler) =>
        Log(bowler).Select(entry => entry.Input).OfType<SessionInput.ShotThrown>().Select(thrown => thrown.Shot.Id!);

    /// <summary>A new station on what was kept; false when there is no order to go on with.</summary>
    public async Task<bool> KillAndGoOnAsync()
    {
        await StopAsync();
        _stop = new CancellationTokenSource();
        Station = New();
        _running = Station.RunAsync(_stop.Token);
        return Lineups.Find(1) is { } lineup && await Station.GoOnTogetherAsync(lineup, RunningStation.Cancelled) is StationReply.Kept;
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        _stop.Dispose();
    }

    private Station New() => new(1, _store, TimeProvider.System, null, Lineups);

    private async Task StopAsync()
    {
        await _stop.CancelAsync();
        try
        {
            await _running;
        }
        catch (OperationCanceledException)
        {
            // Stopped, as asked.
        }
    }
}
