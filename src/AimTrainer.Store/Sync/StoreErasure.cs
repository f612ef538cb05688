using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>Takes people out of any record, and notes it for the chain. What the database keeps of deleted rows is the database's affair.</summary>
/// <param name="store">The record, open for writing.</param>
/// <param name="files">Where wishes are noted.</param>
/// <param name="clock">The time.</param>
public sealed class StoreErasure(IRecordStore store, CenterFiles files, TimeProvider clock) : IRecordErasure
{
    private readonly Forgetting _forgetting = new(store, files, clock);

    /// <inheritdoc/>
    public async Task<Erased?> EraseBowlerAsync(string bowler, CancellationToken cancellationToken)
    {
        try
        {
            return await _forgetting.EraseBowlerAsync(bowler, cancellationToken).ConfigureAwait(false) is { } erasure ? Of(erasure) : null;
        }
        catch (InvalidOperationException exception)
        {
            throw new StoreUnavailableException(exception.Message, exception);
        }
    }

    /// <inheritdoc/>
    public async Task<Erased> EraseBeforeAsync(DateTimeOffset before, CancellationToken cancellationToken) =>
        Of(await _forgetting.EraseBeforeAsync(before, cancellationToken).ConfigureAwait(false));

    private static Erased Of(Erasure erasure) => new(erasure.Id, erasure.AskedAt, erasure.Sessions, []);
}
