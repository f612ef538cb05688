namespace AimTrainer.Web;

/// <summary>
/// Long computations for visitors: one at a time on this host, beside the shots and never before them; one for each visitor, so that a
/// newer wish of theirs ends the older; and so many waiting at most.
/// </summary>
internal sealed class PlanWork : IDisposable
{
    /// <summary>Visitors who are worked for or wait.</summary>
    public const int MostAtOnce = 8;

    private readonly Lock _lock = new();
    private readonly Dictionary<string, PlanTurn> _turns = new(StringComparer.Ordinal);
    private readonly SemaphoreSlim _one = new(1, 1);

    /// <summary>Half of the machine's cores, one at least: the lanes need the others.</summary>
    public static int Cores => Math.Max(1, Environment.ProcessorCount / 2);

    /// <summary>A visitor's turn; null when too many wait.</summary>
    public PlanTurn? Enter(string visitor)
    {
        lock (_lock)
        {
            if (_turns.TryGetValue(visitor, out var before))
            {
                before.Replace();
            }
            else if (_turns.Count >= MostAtOnce)
            {
                return null;
            }

            return _turns[visitor] = new PlanTurn(this, visitor);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _one.Dispose();

    /// <summary>Computes when its turn comes, on a thread of its own that gives way to others.</summary>
    internal async Task<T> RunAsync<T>(Func<T> compute, Action begun, CancellationToken cancellationToken)
    {
        await _one.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            return await Task.Factory.StartNew(
                () =>
                {
                    Thread.CurrentThread.Priority = ThreadPriority.BelowNormal;
                    begun();
                    return compute();
                },
                cancellationToken, TaskCreationOptions.LongRunning, TaskScheduler.Default).ConfigureAwait(false);
        }
        finally
        {
            _one.Release();
        }
    }

    internal void Leave(PlanTurn turn)
    {
        lock (_lock)
        {
            if (_turns.GetValueOrDefault(turn.Visitor) == turn)
            {
                _turns.Remove(turn.Visitor);
            }
        }
    }
}
