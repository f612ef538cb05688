using System.Threading.Channels;

namespace AimTrainer.Display.Tests;

/// <summary>A display loop on a thread of its own, as the program runs one on its first thread.</summary>
internal sealed class RunningLoop : IAsyncDisposable
{
    private readonly Channel<string> _said = Channel.CreateBounded<string>(100);
    private readonly CancellationTokenSource _stop = new();
    private readonly TaskCompletionSource<DisplayLoop> _loop = new();
    private readonly Task _running;

    public RunningLoop(params (WindowWish Wish, IWindowContent Content)[] windows)
    {
        _running = Task.Factory.StartNew(
            () =>
            {
                var start = WindowSystem.Start();
                if (start.System is not { } system)
                {
                    _loop.SetException(new InvalidOperationException(start.Problem));
                    return;
                }

                using (system)
                {
                    using var loop = new DisplayLoop(system, TimeProvider.System, text => _said.Writer.TryWrite(text));
                    foreach (var (wish, content) in windows)
                    {
                        if (loop.Open(wish, content) is { } problem)
                        {
                            Problems.Add(problem);
                        }
                    }

                    Monitors = system.Monitors.All;
                    _loop.SetResult(loop);
                    loop.Run(_stop.Token);
                }
            },
            CancellationToken.None,
            TaskCreationOptions.LongRunning,
            TaskScheduler.Default);
    }

    public List<string> Problems { get; } = [];

    public Domain.ValueList<MonitorInfo> Monitors { get; private set; } = [];

    public Task<DisplayLoop> Loop => _loop.Task;

    /// <summary>Ends when the loop does by itself.</summary>
    public Task Ended => _running;

    public async Task<string> SaidAsync() => await _said.Reader.ReadAsync(TestContext.Current.CancellationToken);

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _running;
        _stop.Dispose();
    }
}
