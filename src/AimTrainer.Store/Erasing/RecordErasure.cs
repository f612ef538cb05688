using System.Security.Cryptography;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>
/// Takes people out of a record, whichever database holds it. An erasure is noted before its rows go (<see cref="Erasures"/>), in the
/// midst of their transaction: a kill at any moment leaves either nothing done, or a wish that is carried out when the record is opened
/// again.
/// </summary>
/// <param name="store">The record, open for writing.</param>
/// <param name="dataFolder">The data folder, held by this process.</param>
/// <param name="clock">The time.</param>
public sealed class RecordErasure(IRecordStore store, string dataFolder, TimeProvider clock) : IRecordErasure
{
    private readonly Erasures _list = new(dataFolder);

    /// <summary>All erasures, oldest first.</summary>
    /// <exception cref="StoreUnavailableException">The list cannot be read; the message names the line.</exception>
    public IReadOnlyList<Erasure> Noted() => _list.All();

    /// <summary>Notes that the chain confirmed an erasure.</summary>
    /// <exception cref="StoreUnavailableException">It cannot be noted.</exception>
    public void ChainTold(string id) => _list.ChainTold(id, clock.GetUtcNow());

    /// <inheritdoc/>
    public async Task<(Erased? Erased, string? Why)> EraseBowlerAsync(string bowler, CancellationToken cancellationToken)
    {
        var (erased, why) = await EraseAsync(new ErasureScope.OfBowler(bowler), cancellationToken).ConfigureAwait(false);
        if (erased is null && why is null)
        {
            // The rows may have gone before, but not every byte: whoever asks once more is asking for that.
            await EraseAgainAsync(cancellationToken).ConfigureAwait(false);
        }

        return (erased, why);
    }

    /// <inheritdoc/>
    public async Task<Erased?> EraseBeforeAsync(DateTimeOffset before, CancellationToken cancellationToken) =>
        (await EraseAsync(new ErasureScope.Before(before), cancellationToken).ConfigureAwait(false)).Erased;

    /// <summary>Erases sessions that the chain was asked to erase; those that are open on a lane wait.</summary>
    /// <returns>What was erased; null when all of them are open.</returns>
    /// <exception cref="StoreUnavailableException">It could not be done, or not to the end: it may be tried again.</exception>
    public async Task<Erased?> EraseForChainAsync(ValueList<string> sessions, CancellationToken cancellationToken) =>
        (await EraseAsync(new ErasureScope.Sessions(sessions), cancellationToken).ConfigureAwait(false)).Erased;

    /// <inheritdoc/>
    public async Task<int> EraseAgainAsync(CancellationToken cancellationToken)
    {
        var noted = _list.All();
        var unfinished = noted.Where(erasure => erasure.FinishedAt is null).ToList();
        var found = new List<string>();
        foreach (var ids in noted.SelectMany(erasure => erasure.Sessions).Chunk(SyncFormat.MostAsked))
        {
            var here = await store.AskAsync(record => record.PositionsOfAsync(ids, cancellationToken), cancellationToken).ConfigureAwait(false);
            found.AddRange(here.Select(session => session.Id));
        }

        if (found.Count > 0 || unfinished.Count > 0)
        {
            await store.EraseAsync(new ErasureScope.Again(found.ToValueList()), _ => { }, cancellationToken).ConfigureAwait(false);
            unfinished.ForEach(erasure => _list.Finished(erasure.Id, clock.GetUtcNow()));
        }

        return found.Count;
    }

    private async Task<(Erased? Erased, string? Why)> EraseAsync(ErasureScope scope, CancellationToken cancellationToken)
    {
        var (id, at) = (RandomNumberGenerator.GetHexString(12, lowercase: true), clock.GetUtcNow());
        var rows = await store.EraseAsync(scope, sessions => _list.Add(id, at, sessions), cancellationToken).ConfigureAwait(false);
        if (!rows.Any)
        {
            return (null, rows.Refusal);
        }

        _list.Finished(id, clock.GetUtcNow());
        return (new Erased(id, at, rows.Sessions, Copies()), null);
    }

    /// <summary>Copies of the record in the data folder, from before a restore or an update, or put there by hand.</summary>
    private ValueList<string> Copies() =>
        Directory.EnumerateFiles(dataFolder, "*.db*")
            .Where(file => file != store.Place && !file.StartsWith(store.Place + "-", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).ToValueList();
}
