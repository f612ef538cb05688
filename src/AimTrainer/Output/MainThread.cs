using System.Threading.Channels;

namespace AimTrainer.Output;

/// <summary>
/// The process's first thread, lent to whoever must have it: windows want to be opened and drawn there. While a command runs on other
/// threads, this one does what is asked of it, one thing after the other.
/// </summary>
internal sealed class MainThread
{
    // Full: whoever asks waits. There is never more than a display loop to run.
    private readonly Channel<Action> _work = Channel.CreateBounded<Action>(4);

    /// <summary>Runs a command elsewhere and lends the calling thread to it until it is done. Once.</summary>
    /// <returns>What the command returned; what it threw is thrown here.</returns>
    public int Lend(Func<Task<int>> command)
    {
        var running = Task.Run(command);
        _ = running.ContinueWith(
            _ => _work.Writer.Complete(), CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
        while (_work.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
        {
            while (_work.Reader.TryRead(out var work))
            {
                work();
            }
        }

        return running.GetAwaiter().GetResult();
    }

    /// <summary>Has something done on the lent thread. Await it before the command ends.</summary>
    public async Task<T> DoAsync<T>(Func<T> work)
    {
        var done = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        await _work.Writer.WriteAsync(() =>
        {
            try
            {
                done.SetResult(work());
            }
            catch (Exception exception) when (done.TrySetException(exception))
            {
                // Whoever asked for it gets it.
            }
        }).ConfigureAwait(false);
        return await done.Task.ConfigureAwait(false);
    }
}
