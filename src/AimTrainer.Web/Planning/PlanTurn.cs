namespace AimTrainer.Web;

/// <summary>One computation of one visitor, from asking to its end.</summary>
/// <param name="work">What it waits for.</param>
/// <param name="visitor">Whose.</param>
internal sealed class PlanTurn(PlanWork work, string visitor) : IDisposable
{
    private readonly CancellationTokenSource _replaced = new();
    private double _share = double.NaN;

    /// <summary>Whose.</summary>
    public string Visitor { get; } = visitor;

    /// <summary>Ends when the same visitor wants something else.</summary>
    public CancellationToken Replaced => _replaced.Token;

    /// <summary>What share is done, 0 to 1; null while it waits for its turn.</summary>
    public double? Share => Volatile.Read(ref _share) is var share && double.IsNaN(share) ? null : share;

    /// <summary>Computes when its turn comes.</summary>
    /// <param name="compute">The computation; it is given what to tell of its progress.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public Task<T> RunAsync<T>(Func<Action<double>, CancellationToken, T> compute, CancellationToken cancellationToken) =>
        work.RunAsync(() => compute(Tell, cancellationToken), () => Tell(0), cancellationToken);

    /// <summary>The visitor wants something else.</summary>
    public void Replace() => _replaced.Cancel();

    /// <inheritdoc/>
    public void Dispose()
    {
        work.Leave(this);
        _replaced.Dispose();
    }

    private void Tell(double share) => Volatile.Write(ref _share, share);
}
