using System.Net;
using System.Net.Sockets;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Web;

namespace AimTrainer.Setup;

/// <summary>The line feed of a session in the terminal.</summary>
internal sealed class StationLines : IDisposable
{
    private readonly LineFeed _feed;
    private readonly Station _station;

    private StationLines(LineFeed feed, Station station) => (_feed, _station) = (feed, station);

    /// <param name="address">Where to listen.</param>
    /// <param name="live">The session.</param>
    /// <param name="view">What happens is shown there.</param>
    /// <param name="dataFolder">Where the passphrase and the tokens are.</param>
    /// <exception cref="UserException">The address cannot be had, or needs a passphrase that is not set.</exception>
    public static StationLines Open(IPEndPoint address, LiveSession live, ISessionView view, string dataFolder)
    {
        if (!IPAddress.IsLoopback(address.Address))
        {
            Binding.RequirePassphrase(dataFolder, $"--lines {address}");
        }

        try
        {
            var feed = new LineFeed(
                new LineFeedSettings { Address = address }, [live.Station], live.Store, new FeedDoor(dataFolder, [live.Station.Number], live.Clock), live.Clock,
                new LineFeedEvents((_, entry, _) => view.Kept(entry, live.Station.Snapshot), view.Notice));
            view.Notice($"Lines are taken at {feed.Address} (docs/feeds.md)");
            return new StationLines(feed, live.Station);
        }
        catch (SocketException exception)
        {
            throw new UserException($"--lines {address}: {exception.Message.TrimEnd('.')}: name another port", ExitCodes.Failed);
        }
    }

    /// <summary>Takes lines until the session ends.</summary>
    public async Task RunAsync(CancellationToken cancellationToken)
    {
        await _feed.StartAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            await foreach (var picture in _station.WatchAsync(cancellationToken).ConfigureAwait(false))
            {
                if (picture.Phase == SessionPhase.Ended)
                {
                    return;
                }
            }
        }
        finally
        {
            await _feed.StopAsync(CancellationToken.None).ConfigureAwait(false);
        }
    }

    public void Dispose() => _feed.Dispose();
}
