namespace AimTrainer.Web;

/// <summary>Counts changes and wakes everybody who waits for the next one.</summary>
internal sealed class ChangeSignal
{
    private readonly Lock _lock = new();
    private TaskCompletionSource _next = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private long _count;

    public void Raise()
    {
        TaskCompletionSource waiting;
        lock (_lock)
        {
            _count++;
            waiting = _next;
            _next = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        }

        waiting.SetResult();
    }

    /// <summary>Waits until there are more changes than the caller knows of.</summary>
    /// <param name="known">The count that the caller has; 0 before its first look.</param>
    /// <param name="patience">How long to wait.</param>
    /// <param name="clock">The time.</param>
    /// <param name="cancellationToken">Ends the waiting.</param>
    /// <returns>The count now; the caller's own when nothing came in time.</returns>
    public async Task<long> WaitAsync(long known, TimeSpan patience, TimeProvider clock, CancellationToken cancellationToken)
    {
        Task next;
        lock (_lock)
        {
            if (_count > known)
            {
                return _count;
            }

            next = _next.Task;
        }

        try
        {
            await next.WaitAsync(patience, clock, cancellationToken).ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            return known;
        }

        lock (_lock)
        {
            return _count;
        }
    }
}
