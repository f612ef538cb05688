using AimTrainer.Domain;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Sessions.Tests;

/// <summary>A station that runs until it is disposed of.</summary>
internal sealed class RunningStation : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _running;

    public RunningStation(int number = 1, MemoryStore? store = null, bool run = true)
    {
        Store = store ?? new MemoryStore();
        Station = new Station(number, Store, Clock);
        _running = run ? Station.RunAsync(_stop.Token) : Task.CompletedTask;
    }

    public MemoryStore Store { get; }

    public FakeTimeProvider Clock { get; } = new(Sample.Start);

    public Station Station { get; }

    public static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    /// <summary>A station with a session that has begun.</summary>
    public static async Task<RunningStation> BegunAsync(DrillSource drill, MemoryStore? store = null)
    {
        var running = new RunningStation(1, store);
        Assert.Equal(new StationReply.Kept(null), await running.Station.StartAsync(Sample.Setup(), drill, Cancelled));
        Assert.IsType<StationReply.Kept>(await running.Station.FollowAsync(new SessionInput.Begin(Sample.Start), Cancelled));
        return running;
    }

    public Task<StationReply> ThrowAsync(double board, string? id = null) => Station.ThrowAsync(Sample.Shot(board, id), Cancelled);

    public Task<StationReply> FollowAsync(SessionInput input) => Station.FollowAsync(input, Cancelled);

    public async Task StopAsync()
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

    public async ValueTask DisposeAsync()
    {
        Store.Release();
        await StopAsync();
        _stop.Dispose();
    }
}
