using AimTrainer.Display;

namespace AimTrainer.Setup;

/// <summary>
/// Makes windows of this machine dark while projection is stopped at a host elsewhere. While the host is away they stay as they were: dark
/// when they were dark, since nobody released them.
/// </summary>
internal sealed class HostStop : IAsyncDisposable
{
    private static readonly double[] WaitSeconds = [0, 0.5, 1, 2, 3];

    private readonly Uri _server;
    private readonly Darkness _darkness;
    private readonly TimeProvider _clock;
    private readonly Action<string> _say;
    private readonly HttpClient _client;
    private readonly CancellationTokenSource _stop = new();
    private readonly TaskCompletionSource<string?> _first = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task _running;
    private bool _isAway;

    private HostStop(Uri server, Darkness darkness, TimeProvider clock, Action<string> say)
    {
        (_server, _darkness, _clock, _say) = (server, darkness, clock, say);
        _client = DisplaySource.Client();
        _darkness.Set(new DarkReason.Waiting(Name));
        _running = RunAsync();
    }

    /// <summary>Null once the host has told whether projection is stopped; why it did not at the first try.</summary>
    public Task<string?> First => _first.Task;

    private string Name => _server.GetLeftPart(UriPartial.Authority);

    /// <summary>Begins: dark until the host has told, or has not answered once.</summary>
    /// <param name="server">The host.</param>
    /// <param name="darkness">A part of the windows' darkness, for this host alone.</param>
    /// <param name="clock">The time.</param>
    /// <param name="say">Told when the host goes away, and when it is back.</param>
    public static HostStop Begin(Uri server, Darkness darkness, TimeProvider clock, Action<string> say) => new(server, darkness, clock, say);

    /// <summary>Ends it; the windows are left as they are.</summary>
    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync().ConfigureAwait(false);
        await _running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _client.Dispose();
        _stop.Dispose();
    }

    private async Task RunAsync()
    {
        var tries = 0;
        while (true)
        {
            var heard = false;
            var ended = await StopStream.ReadAsync(_client, _server, _clock, stopped =>
            {
                heard = true;
                Heard(stopped);
            }, _stop.Token).ConfigureAwait(false);
            tries = heard ? 0 : tries + 1;
            if (tries > 0)
            {
                Away(ended.Why);
            }

            await Task.Delay(TimeSpan.FromSeconds(WaitSeconds[Math.Min(tries, WaitSeconds.Length - 1)]), _clock, _stop.Token).ConfigureAwait(false);
        }
    }

    private void Heard(bool stopped)
    {
        _darkness.Set(stopped ? new DarkReason.Stopped() : null);
        if (_isAway)
        {
            _isAway = false;
            _say($"{Name}: answers again; its emergency stop reaches this window");
        }

        _first.TrySetResult(null);
    }

    private void Away(string why)
    {
        if (_darkness.Reason is DarkReason.Waiting)
        {
            // Whoever calibrates stands beside it, and hosts that are no more must not keep a projector dark for ever.
            _darkness.Set(null);
        }

        if (!_isAway)
        {
            _isAway = true;
            var now = _darkness.Reason is null ? "lit" : "dark";
            _say($"{Name}: {why}; its emergency stop does not reach this window until it answers, and the picture stays {now}; Escape closes it");
        }

        _first.TrySetResult(why);
    }
}
