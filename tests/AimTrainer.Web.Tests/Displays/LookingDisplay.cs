using AimTrainer.Display;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Web.Tests;

/// <summary>A display elsewhere that follows a host, without a window.</summary>
internal sealed class LookingDisplay : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly HttpClient _client = new() { Timeout = Timeout.InfiniteTimeSpan };
    private readonly ChangeSignal _changed = new();
    private readonly Task _following;

    public LookingDisplay(Uri server, int station, ScreenKind kind, string? token)
    {
        Slot = new NewsSlot(new DisplayNews(SessionSnapshot.Idle(station), null), Changed);
        Dark = new Darkness(Changed);
        var follower = new DisplayFollower(new DisplayHost(server, station, kind, token), _client, TimeProvider.System, Slot, Dark)
        {
            Say = text =>
            {
                lock (Said)
                {
                    Said.Add(text);
                }
            },
        };
        _following = follower.RunAsync(_stop.Token);
    }

    public NewsSlot Slot { get; }

    public Darkness Dark { get; }

    public List<string> Said { get; } = [];

    /// <summary>Every state that a frame could have been drawn of, in order.</summary>
    public List<(DisplayNews News, DarkReason? Dark)> Seen { get; } = [];

    /// <summary>Waits until it is as a test wants it; a minute, so that a test that fails ends.</summary>
    public async Task UntilAsync(Func<LookingDisplay, bool> isSo)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromMinutes(1));
        for (var known = 0L; !isSo(this);)
        {
            known = await _changed.WaitAsync(known, TimeSpan.FromMinutes(1), TimeProvider.System, patience.Token);
        }
    }

    /// <summary>The scene of the screen above the lane, in words.</summary>
    public string Overhead() => OverheadOf(Slot.Newest.Snapshot);

    public static string OverheadOf(SessionSnapshot snapshot) =>
        SceneText.Write(OverheadScene.Build(new OverheadSceneInput { Snapshot = snapshot, SinceShot = TimeSpan.FromSeconds(1) }));

    /// <summary>The scene on the lane, in words.</summary>
    public string Projector() => ProjectorOf(Slot.Newest.Snapshot);

    public static string ProjectorOf(SessionSnapshot snapshot) =>
        SceneText.Write(ProjectorScene.Build(new ProjectorSceneInput { Snapshot = snapshot, SinceShot = TimeSpan.FromSeconds(1) }));

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _following.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _client.Dispose();
        _stop.Dispose();
    }

    private void Changed()
    {
        lock (Seen)
        {
            Seen.Add((Slot.Newest, Dark.Reason));
        }

        _changed.Raise();
    }
}
