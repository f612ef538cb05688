using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Web;

namespace AimTrainer.Setup;

/// <summary>
/// The emergency stops of the hosts elsewhere that a calibration obeys: of the one that is named, and of all that displays of this
/// machine have a token of, since the projector that is calibrated hangs at one of their lanes.
/// </summary>
/// <param name="named">The host of <c>--host</c>; null for none.</param>
/// <param name="dataFolder">The folder that holds the displays' tokens.</param>
/// <param name="clock">The time.</param>
/// <param name="say">Told how the lines stand.</param>
internal sealed class HostStops(Uri? named, string dataFolder, TimeProvider clock, Action<string> say) : IAsyncDisposable
{
    private readonly List<HostStop> _stops = [];

    /// <summary>Begins, and waits until every host has told whether projection is stopped, or has not answered.</summary>
    /// <param name="darkness">The windows' darkness.</param>
    /// <exception cref="UserException">The host that is named does not answer, or the file of tokens cannot be read.</exception>
    public async Task BeginAsync(Darkness darkness)
    {
        var servers = Held().ToList();
        if (named is not null)
        {
            servers.RemoveAll(server => server.Authority == named.Authority);
            servers.Insert(0, named);
        }

        _stops.AddRange(servers.Select(server => HostStop.Begin(server, darkness.Part(), clock, say)));
        var first = await Task.WhenAll(_stops.Select(stop => stop.First)).ConfigureAwait(false);
        if (named is not null && first[0] is { } why)
        {
            throw new UserException(
                $"--host {named}: {why}; allowed: the address of a console that runs, as aimtrainer serve prints it; without --host the keys work", ExitCodes.Failed);
        }
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var stop in _stops)
        {
            await stop.DisposeAsync().ConfigureAwait(false);
        }
    }

    private IReadOnlyList<Uri> Held()
    {
        try
        {
            return new HeldTokens(dataFolder).Servers();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            throw new UserException(exception.Message, ExitCodes.Failed);
        }
    }
}
