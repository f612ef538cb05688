using System.Data.Common;

namespace AimTrainer.Store;

/// <summary>An open connection that runs <see cref="StepStatement"/>s, one transaction after the other.</summary>
internal abstract class StepStatements : IDisposable
{
    /// <summary>Begins a transaction that may write.</summary>
    public abstract void Begin();

    /// <summary>Keeps the transaction: when this returns, it survives a power cut.</summary>
    public abstract void Commit();

    /// <summary>Takes back whatever is not yet committed; the database may have done so itself.</summary>
    public abstract void RollBack();

    /// <summary>Runs a statement, at the latest before the next one that gives an answer, or the commit.</summary>
    public abstract void Run(StepStatement statement, params ReadOnlySpan<object?> values);

    /// <summary>Runs a statement at once.</summary>
    /// <returns>How many rows it changed.</returns>
    public abstract int RunNow(StepStatement statement, params ReadOnlySpan<object?> values);

    /// <summary>Runs a statement and gives the first row of its answer, or null.</summary>
    public abstract T? First<T>(StepStatement statement, Func<DbDataReader, T> read, params ReadOnlySpan<object?> values)
        where T : class;

    /// <summary>Changes what is no step, through EF, in a transaction of its own.</summary>
    /// <param name="change">Makes the change and saves it.</param>
    /// <param name="newSession">The id of the session that the change makes; null when it makes none.</param>
    public abstract void Change(Action<RecordContext> change, string? newSession);

    /// <inheritdoc/>
    public abstract void Dispose();
}
