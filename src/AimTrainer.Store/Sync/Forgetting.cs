using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>Carries out a person's wish to be forgotten: first noted, then done, so that a kill in between leaves the wish.</summary>
/// <param name="store">The record, open for writing.</param>
/// <param name="files">Where wishes are noted.</param>
/// <param name="clock">The time.</param>
public sealed class Forgetting(IRecordStore store, CenterFiles files, TimeProvider clock)
{
    /// <summary>Erases a bowler with all sessions.</summary>
    /// <returns>What was erased, or null when there is no such bowler.</returns>
    /// <exception cref="InvalidOperationException">A session of the bowler is not over.</exception>
    /// <exception cref="StoreUnavailableException">It could not be done now; once it was noted it is done at the next sending.</exception>
    public async Task<Erasure?> EraseBowlerAsync(string bowler, CancellationToken cancellationToken)
    {
        var sessions = await store.ListAsync(new SessionFilter { Bowler = bowler, Limit = int.MaxValue }, cancellationToken).ConfigureAwait(false);
        if (sessions.Count == 0)
        {
            return null;
        }

        if (sessions.AsEnumerable().FirstOrDefault(session => !session.Ended) is { } open)
        {
            throw new InvalidOperationException($"session {open.SessionId} of {open.Bowler} is not over: end it on station {open.Station} first");
        }

        return await EraseAsync(sessions.Select(session => session.SessionId).ToValueList(), null, cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Erases the sessions that are over and were set up before a time, and bowlers of whom nothing is left.</summary>
    public async Task<Erasure> EraseBeforeAsync(DateTimeOffset before, CancellationToken cancellationToken)
    {
        var sessions = await store.ListAsync(new SessionFilter { Ended = true, Limit = int.MaxValue }, cancellationToken).ConfigureAwait(false);
        var old = sessions.AsEnumerable().Where(session => session.StartedAt < before).Select(session => session.SessionId).ToValueList();
        return old.Count == 0 ? new Erasure("none", clock.GetUtcNow(), [], null) : await EraseAsync(old, null, cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Erases sessions that the chain was asked to erase; those that are not over wait.</summary>
    public async Task<Erasure?> EraseForChainAsync(ValueList<string> sessions, CancellationToken cancellationToken)
    {
        var here = await store.AskAsync(record => record.PositionsOfAsync([.. sessions], cancellationToken), cancellationToken).ConfigureAwait(false);
        var open = here.Where(session => !session.Ended).Select(session => session.Id).ToHashSet();
        var ripe = sessions.AsEnumerable().Where(id => !open.Contains(id)).ToValueList();
        return ripe.Count == 0 ? null : await EraseAsync(ripe, null, cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Carries out again what was noted: a kill may have come in between, or a backup brought back what had gone.</summary>
    public async Task CarryOutAsync(CancellationToken cancellationToken)
    {
        var noted = files.ReadErasures().SelectMany(erasure => erasure.Sessions).ToList();
        foreach (var ids in noted.Chunk(SyncFormat.MostAsked))
        {
            var here = await store.AskAsync(record => record.PositionsOfAsync(ids, cancellationToken), cancellationToken).ConfigureAwait(false);
            if (here.Count > 0)
            {
                await store.EraseAsync(here.Select(session => session.Id).ToValueList(), cancellationToken).ConfigureAwait(false);
            }
        }
    }

    private async Task<Erasure> EraseAsync(ValueList<string> sessions, DateTimeOffset? chainDoneAt, CancellationToken cancellationToken)
    {
        var erasure = new Erasure(Guid.NewGuid().ToString("n"), clock.GetUtcNow(), sessions, chainDoneAt);
        files.Write(files.ReadErasures().AsEnumerable().Append(erasure).ToValueList());
        await store.EraseAsync(sessions, cancellationToken).ConfigureAwait(false);
        return erasure;
    }
}
