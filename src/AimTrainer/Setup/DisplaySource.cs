using AimTrainer.Display;
using AimTrainer.Store;

namespace AimTrainer.Setup;

/// <summary>Where a display of its own gets its news from: a data folder of this machine, or a host elsewhere.</summary>
internal sealed class DisplaySource
{
    private readonly Func<NewsSlot, Darkness, CancellationToken, Task> _follow;

    private DisplaySource(string? stopFolder, Func<NewsSlot, Darkness, CancellationToken, Task> follow) => (StopFolder, _follow) = (stopFolder, follow);

    /// <summary>The data folder whose emergency stop holds; null where the host tells of it.</summary>
    public string? StopFolder { get; }

    /// <summary>The record of a data folder.</summary>
    public static DisplaySource OfRecord(Func<IRecordStore> open, string? named, string folder, int station, Action<string> say) =>
        new(folder, (news, _, cancellationToken) => new DisplayRecord(named, station, TimeProvider.System, news) { Say = say, Open = open }.RunAsync(cancellationToken));

    /// <summary>A host elsewhere.</summary>
    public static DisplaySource OfHost(DisplayHost host, Action<string> say) => new(null, async (news, darkness, cancellationToken) =>
    {
        // A host that moved to another address is looked up anew.
        using var handler = new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false, PooledConnectionLifetime = TimeSpan.FromMinutes(1), ConnectTimeout = TimeSpan.FromSeconds(5) };
        using var client = new HttpClient(handler) { Timeout = Timeout.InfiniteTimeSpan };
        await new DisplayFollower(host, client, TimeProvider.System, news, darkness) { Say = say }.RunAsync(cancellationToken).ConfigureAwait(false);
    });

    /// <summary>Looks at the emergency stop: once before this returns, and then until cancelled.</summary>
    public Task LookAtStopAsync(Darkness darkness, CancellationToken cancellationToken)
    {
        if (StopFolder is not { } folder)
        {
            return Task.CompletedTask;
        }

        var stop = new StopLook(folder, darkness, TimeProvider.System);
        stop.Look();
        return stop.RunAsync(cancellationToken);
    }

    /// <summary>Follows until the windows are closed or the program is asked to stop.</summary>
    public async Task FollowAsync(NewsSlot news, Darkness darkness, Task closed, CancellationToken cancellationToken)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var following = _follow(news, darkness, stop.Token);
        await Task.WhenAny(following, closed).ConfigureAwait(false);
        await stop.CancelAsync().ConfigureAwait(false);
        try
        {
            await following.ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The window was closed, or somebody asked the program to stop.
        }
    }
}
