using System.Runtime.CompilerServices;
using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>
/// Sends a center's events to the chain: each session's steps in order, as often as it takes. What the chain has is the chain's to say;
/// nothing here decides that something was sent. So a step may be sent twice and is taken once, and whoever is killed, here or there,
/// goes on from what the chain has.
/// </summary>
/// <param name="store">The center's record.</param>
/// <param name="link">The line.</param>
/// <param name="files">Where the state is noted.</param>
/// <param name="erasing">Erases what the chain was asked to erase, and knows what the chain has to be told.</param>
/// <param name="clock">The time.</param>
/// <param name="groups">The center's groups; null when the chain is to hear of none.</param>
public sealed class CenterSync(IRecordStore store, IChainLink link, CenterFiles files, RecordErasure erasing, TimeProvider clock, CenterGroups? groups = null)
{
    /// <summary>All sessions are compared with the chain's so often: what was changed long after its end, or lost at the chain, is found then.</summary>
    private static readonly TimeSpan CompareEvery = TimeSpan.FromHours(1);

    /// <summary>Adding up what waits takes time that sending could use.</summary>
    private static readonly TimeSpan NoteEvery = TimeSpan.FromSeconds(2);

    private readonly Dictionary<string, long> _behind = [];
    private readonly SortedDictionary<string, string> _setAside = new(StringComparer.Ordinal);
    private bool _erasedAgain;
    private long _lookedAtKey;
    private long? _comparedAt;
    private GroupsRequest? _told;
    private int _unknown;
    private bool _newPeople;
    private SyncState _state = Noted(files, link.Name);

    /// <summary>How it stands.</summary>
    public SyncState State => _state;

    /// <summary>Sends until nothing waits, or something stands in the way.</summary>
    /// <returns>How it stands; also in <see cref="State"/> and in the folder.</returns>
    /// <exception cref="StoreUnavailableException">The center's own record, or its list of erasures, cannot be read.</exception>
    public async Task<SyncState> RunAsync(CancellationToken cancellationToken)
    {
        try
        {
            await SendErasuresAsync(cancellationToken).ConfigureAwait(false);
            await CompareAsync(cancellationToken).ConfigureAwait(false);
            var noted = clock.GetTimestamp();
            while (await DeliverAsync(cancellationToken).ConfigureAwait(false))
            {
                if (clock.GetElapsedTime(noted) >= NoteEvery)
                {
                    await NoteAsync(null, cancellationToken).ConfigureAwait(false);
                    noted = clock.GetTimestamp();
                }
            }

            var problem = await TellGroupsAsync(cancellationToken).ConfigureAwait(false);
            await NoteAsync(problem, cancellationToken).ConfigureAwait(false);
        }
        catch (Exception exception) when (exception is ChainAwayException or ChainRefusedException)
        {
            await NoteAsync(exception.Message, cancellationToken).ConfigureAwait(false);
        }

        return _state;
    }

    /// <summary>What is still true after a restart: when this chain was last reached, and what it calls the center. What waits is the chain's to say.</summary>
    private static SyncState Noted(CenterFiles files, string chain)
    {
        var fresh = new SyncState { Chain = chain };
        try
        {
            return files.ReadState() is { } noted && noted.Chain == chain ? fresh with { Center = noted.Center, ReachedAt = noted.ReachedAt } : fresh;
        }
        catch (StoreUnavailableException)
        {
            // Only a note: it is written anew.
            return fresh;
        }
    }

    private async Task SendErasuresAsync(CancellationToken cancellationToken)
    {
        if (!_erasedAgain)
        {
            // Before anything is sent: a copy that was put back must not bring a person back there. Later nothing can put one back, since this
            // process holds the folder.
            await erasing.EraseAgainAsync(cancellationToken).ConfigureAwait(false);
            _erasedAgain = true;
        }

        foreach (var erasure in erasing.Noted().Where(erasure => erasure.ChainToldAt is null))
        {
            foreach (var ids in erasure.Sessions.Chunk(SyncFormat.MostAsked))
            {
                await link.EraseAsync(new ErasureRequest(SyncFormat.Messages, SyncFormat.Events, ids.ToValueList()), cancellationToken).ConfigureAwait(false);
            }

            Reached();
            erasing.ChainTold(erasure.Id);
        }
    }

    /// <summary>Tells the chain who follows which program: after the steps, because it keeps only people of whom it has a session.</summary>
    /// <returns>Why the groups could not be told of, which is no reason to send no steps; null when all is well.</returns>
    private async Task<string?> TellGroupsAsync(CancellationToken cancellationToken)
    {
        if (groups is null)
        {
            return null;
        }

        GroupsRequest request;
        try
        {
            request = groups.Read();
        }
        catch (StoreUnavailableException exception)
        {
            return exception.Message;
        }

        if (request != _told || _newPeople)
        {
            var answer = await link.TellGroupsAsync(request, cancellationToken).ConfigureAwait(false);
            Reached();
            (_told, _newPeople) = (request, false);
            _unknown = answer?.Unknown ?? 0;
        }

        return null;
    }

    /// <summary>Finds which sessions the chain is behind with: all of them at times, else the new ones.</summary>
    private async Task CompareAsync(CancellationToken cancellationToken)
    {
        var all = _comparedAt is null || clock.GetElapsedTime(_comparedAt.Value) >= CompareEvery;
        while (true)
        {
            var key = all ? 0 : _lookedAtKey;
            var here = await store.AskAsync(record => record.PositionsAsync(key, SyncFormat.MostAsked, cancellationToken), cancellationToken).ConfigureAwait(false);

            // Asked also when there is nothing new: the chain may have something to say.
            var there = await link.HaveAsync(
                new HaveRequest(SyncFormat.Messages, SyncFormat.Events, here.Select(session => session.Id).ToValueList()), cancellationToken).ConfigureAwait(false);
            if (SyncFormat.WhyNot(there.Messages, Math.Min(there.Events, SyncFormat.Events), "the chain", "this center") is { } why)
            {
                throw new ChainRefusedException($"{link.Name}: {why}");
            }

            Reached();
            _state = _state with { Center = there.Center };
            if (all)
            {
                // Only now, so that what is known to wait stays known while the chain is away.
                all = false;
                _behind.Clear();
                _setAside.Clear();
                _lookedAtKey = 0;
                _comparedAt = null;
                _told = null;
            }

            var have = there.Have.ToDictionary(session => session.Id);
            foreach (var session in here)
            {
                if (!have.TryGetValue(session.Id, out var known) || (!known.Erased && (known.Sequence < session.Sequence || !session.Ended)))
                {
                    _behind[session.Id] = known?.Sequence ?? 0;
                }
                else if (known.Sequence > session.Sequence && !known.Erased)
                {
                    SetAside(session.Id, FormattableString.Invariant($"the chain has step {known.Sequence}, this record only {session.Sequence}: was an old backup restored here?"));
                }
            }

            if (here.Count > 0)
            {
                _lookedAtKey = here[^1].Key;
            }

            if (there.Erase.Count > 0 && await erasing.EraseForChainAsync(there.Erase, cancellationToken).ConfigureAwait(false) is not null)
            {
                await SendErasuresAsync(cancellationToken).ConfigureAwait(false);
            }

            if (here.Count < SyncFormat.MostAsked)
            {
                _comparedAt ??= clock.GetTimestamp();
                return;
            }
        }
    }

    /// <summary>Sends one delivery.</summary>
    /// <returns>Whether the chain has more than before.</returns>
    private async Task<bool> DeliverAsync(CancellationToken cancellationToken)
    {
        var sessions = new List<DeliveredSession>();
        var (steps, bytes) = (0, 0);
        await foreach (var position in PositionsAsync(cancellationToken).ConfigureAwait(false))
        {
            var have = _behind[position.Id];
            if (have >= position.Sequence)
            {
                // One that is not over will have more to send.
                if (position.Ended)
                {
                    _behind.Remove(position.Id);
                }

                continue;
            }

            var room = SyncFormat.MostSteps - steps;
            var next = await store.AskAsync(record => record.ToDeliverAsync(position.Id, have, room, cancellationToken), cancellationToken).ConfigureAwait(false);
            if (next is null || next.Steps.Count == 0)
            {
                continue;
            }

            next = next with { Steps = Fitting(next.Steps, ref bytes, mayBeFirst: sessions.Count == 0) };
            if (next.Steps.Count == 0)
            {
                break;
            }

            sessions.Add(next);
            steps += next.Steps.Count;
            if (sessions.Count >= SyncFormat.MostSessions || steps >= SyncFormat.MostSteps)
            {
                break;
            }
        }

        if (sessions.Count == 0)
        {
            return false;
        }

        var answer = await link.DeliverAsync(new Delivery(SyncFormat.Messages, SyncFormat.Events, sessions.ToValueList()), cancellationToken).ConfigureAwait(false);
        Reached();

        // A bowler whom the chain did not know may have come with them.
        _newPeople |= _unknown > 0 && sessions.Exists(session => session.SetupJson is not null);
        return Take(answer);
    }

    private bool Take(DeliveryAnswer answer)
    {
        var moved = false;
        foreach (var session in answer.Sessions)
        {
            if (session.Erased)
            {
                moved |= _behind.Remove(session.Id);
            }
            else if (session.Problem is { } problem)
            {
                SetAside(session.Id, problem);
                moved = true;
            }
            else if (_behind.TryGetValue(session.Id, out var before) && session.Sequence != before)
            {
                _behind[session.Id] = session.Sequence;
                moved = true;
            }
        }

        return moved;
    }

    private void SetAside(string session, string why)
    {
        _behind.Remove(session);
        _setAside[session] = why;
    }

    private void Reached() => _state = _state with { ReachedAt = clock.GetUtcNow() };

    /// <summary>Where the sessions that the chain is behind with stand here, looked up as they are asked for.</summary>
    private async IAsyncEnumerable<SessionPosition> PositionsAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        foreach (var ids in _behind.Keys.ToList().Chunk(SyncFormat.MostAsked))
        {
            var positions = await store.AskAsync(record => record.PositionsOfAsync(ids, cancellationToken), cancellationToken).ConfigureAwait(false);

            // A session that was erased here is nowhere any more.
            foreach (var gone in ids.Except(positions.Select(position => position.Id)))
            {
                _behind.Remove(gone);
            }

            foreach (var position in positions)
            {
                yield return position;
            }
        }
    }

    private async Task NoteAsync(string? error, CancellationToken cancellationToken)
    {
        var state = _state with
        {
            Error = error,
            ErrorAt = error is null ? null : clock.GetUtcNow(),
            SetAside = _setAside.Select(pair => $"{pair.Key}: {pair.Value}").ToValueList(),
            ErasuresWaiting = erasing.Noted().Count(erasure => erasure.ChainToldAt is null),
            WaitingSteps = null,
            WaitingSessions = null,
            WaitingSince = null,
        };
        if (_comparedAt is not null)
        {
            var key = _lookedAtKey;
            var waiting = (await store.AskAsync(record => record.PositionsAsync(key, int.MaxValue, cancellationToken), cancellationToken).ConfigureAwait(false))
                .ConvertAll(session => (Session: session, Have: 0L));
            await foreach (var session in PositionsAsync(cancellationToken).ConfigureAwait(false))
            {
                waiting.Add((session, _behind[session.Id]));
            }

            waiting.RemoveAll(one => one.Session.Sequence <= one.Have);
            DateTimeOffset? since = null;
            foreach (var (session, have) in waiting.OrderBy(one => one.Session.StartedAt).TakeWhile(one => since is null || one.Session.StartedAt < since))
            {
                var at = await store.AskAsync(record => record.WhenAsync(session.Id, have + 1, cancellationToken), cancellationToken).ConfigureAwait(false);
                since = since is null || at < since ? at : since;
            }

            state = state with
            {
                WaitingSteps = waiting.Sum(one => one.Session.Sequence - one.Have),
                WaitingSessions = waiting.Count,
                WaitingSince = since,
            };
        }

        _state = state;
        files.Write(state);
    }

    private static ValueList<DeliveredStep> Fitting(ValueList<DeliveredStep> steps, ref int bytes, bool mayBeFirst)
    {
        var fitting = new List<DeliveredStep>();
        foreach (var step in steps)
        {
            var size = Encoding.UTF8.GetByteCount(step.InputJson) + Encoding.UTF8.GetByteCount(step.EventsJson);
            if (bytes + size > SyncFormat.MostBytes && !(mayBeFirst && fitting.Count == 0))
            {
                break;
            }

            fitting.Add(step);
            bytes += size;
        }

        return fitting.ToValueList();
    }
}
