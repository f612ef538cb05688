using AimTrainer.Display;
using AimTrainer.Store;

namespace AimTrainer.Setup;

/// <summary>Where a display of its own gets its news from: a data folder of this machine, or a host elsewhere.</summary>
internal sealed class DisplaySource
{
    private readonly Func<NewsSlot, Darkness, CancellationToken, Task> _follow;

    private readonly DarkReason? _before;

    private DisplaySource(string stopFolder, DarkReason? before, Func<NewsSlot, Darkness, CancellationToken, Task> follow) => (StopFolder, _before, _follow) = (stopFolder, before, follow);

    /// <summary>The data folder of this machine, whose emergency stop holds here too when a host elsewhere is shown.</summary>
    public string StopFolder { get; }

    /// <summary>The record of a data folder.</summary>
    public static DisplaySource OfRecord(Func<IRecordStore> open, string? named, string folder, int station, Action<string> say) =>
        new(folder, null, (news, _, cancellationToken) => new DisplayRecord(named, station, TimeProvider.System, news) { Say = say, Open = open }.RunAsync(cancellationToken));

    /// <summary>A host elsewhere.</summary>
    public static DisplaySource OfHost(DisplayHost host, string folder, Action<string> say) => new(folder, host.Waiting, async (news, darkness, cancellationToken) =>
    {
        using var client = Client();
        await new DisplayFollower(host, client, TimeProvider.System, news, darkness) { Say = say }.RunAsync(cancellationToken).ConfigureAwait(false);
    });

    /// <summary>What asks a host for a stream, which has no end.</summary>
    public static HttpClient Client()
    {
        // A host that moved to another address is looked up anew.
        var handler = new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false, PooledConnectionLifetime = TimeSpan.FromMinutes(1), ConnectTimeout = TimeSpan.FromSeconds(5) };
        return new HttpClient(handler) { Timeout = Timeout.InfiniteTimeSpan };
    }

    /// <summary>The source's own part of the windows' darkness, as it is before anything was heard: taken before the first frame.</summary>
    public Darkness PartOf(Darkness windows)
    {
        var part = windows.Part();
        part.Set(_before);
        return part;
    }

    /// <summary>Looks at this machine's emergency stop: once before this returns, and then until cancelled.</summary>
    /// <param name="darkness">A part for it alone.</param>
    /// <param name="cancellationToken">Ends it.</param>
    public Task LookAtStopAsync(Darkness darkness, CancellationToken cancellationToken)
    {
        var stop = new StopLook(StopFolder, darkness, TimeProvider.System);
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
