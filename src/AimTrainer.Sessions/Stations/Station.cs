using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using System.Threading.Channels;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// One lane's engine. Everything comes by one door, a bounded channel with one reader; when it is full the sender waits, so
/// nothing is ever dropped. A step is worked out, kept, and only then answered and shown.
/// </summary>
public sealed class Station
{
    /// <summary>How many messages may wait; a sender waits when there are more.</summary>
    public const int Capacity = 256;

    private const string Stopped = "the station was stopped before this was kept: send it again when it runs";

    private readonly ISessionStore _store;
    private readonly TimeProvider _clock;
    private readonly ILineupKeeper? _lineups;
    private readonly IScreenNames? _names;
    private readonly Channel<StationMessage> _door = Channel.CreateBounded<StationMessage>(
        new BoundedChannelOptions(Capacity) { SingleReader = true, FullMode = BoundedChannelFullMode.Wait });

    private readonly Lock _watchersLock = new();
    private readonly List<Channel<SessionSnapshot>> _watchers = [];
    private readonly StationMeters? _meters;
    private readonly Dictionary<string, SessionInProgress> _together = new(StringComparer.Ordinal);
    private SessionInProgress? _session;
    private Lineup? _lineup;
    private LastThrow? _last;
    private volatile SessionSnapshot _snapshot;
    private bool _stopped;

    /// <summary>Makes a station; it works once <see cref="RunAsync"/> does.</summary>
    /// <param name="number">Its number, from 1.</param>
    /// <param name="store">Where its sessions are kept.</param>
    /// <param name="clock">The time.</param>
    /// <param name="meters">What measures it; null for nothing.</param>
    /// <param name="lineups">Where the order is kept when several bowlers share the lane; null where none do.</param>
    /// <param name="names">How names may be shown on screens; null shows initials.</param>
    public Station(int number, ISessionStore store, TimeProvider clock, StationMeters? meters = null, ILineupKeeper? lineups = null, IScreenNames? names = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        Number = number;
        _store = store;
        _clock = clock;
        _meters = meters;
        _lineups = lineups;
        _names = names;
        _snapshot = SessionSnapshot.Idle(number);
    }

    /// <summary>Its number, from 1.</summary>
    public int Number { get; }

    /// <summary>The newest picture of the session.</summary>
    public SessionSnapshot Snapshot => _snapshot;

    /// <summary>Begins a new session: waiting, its first target not yet shown.</summary>
    /// <exception cref="ArgumentException">The session is set up for another station.</exception>
    /// <exception cref="InvalidOperationException">There is a session with this id.</exception>
    public Task<StationReply> StartAsync(SessionSetup setup, DrillSource drill, CancellationToken cancellationToken) =>
        setup.Station == Number
            ? SendAsync(new StationMessage.Start(setup, drill), cancellationToken)
            : throw new ArgumentException($"a session for station {setup.Station} cannot start on station {Number}", nameof(setup));

    /// <summary>Goes on with a session that was interrupted, from its last acknowledged step; one that is over takes corrections only.</summary>
    public Task<StationReply> GoOnAsync(StoredSession stored, CancellationToken cancellationToken) =>
        SendAsync(new StationMessage.GoOn(stored), cancellationToken);

    /// <summary>
    /// One more bowler comes to the lane, with a session of her own, and takes turns with those who are there: waiting, as after
    /// <see cref="StartAsync"/>. On a lane with nobody this is a start.
    /// </summary>
    /// <exception cref="ArgumentException">The session is set up for another station.</exception>
    public Task<StationReply> JoinAsync(SessionSetup setup, DrillSource drill, CancellationToken cancellationToken) =>
        setup.Station == Number
            ? SendAsync(new StationMessage.Join(setup, drill), cancellationToken)
            : throw new ArgumentException($"a session for station {setup.Station} cannot join on station {Number}", nameof(setup));

    /// <summary>People change the order of a shared lane.</summary>
    /// <param name="change">What; joining has <see cref="JoinAsync"/>.</param>
    /// <param name="seen">The number of the order that was seen (<see cref="LaneTurns.Number"/>): refused when it is another by now. Null changes whatever is there.</param>
    /// <param name="cancellationToken">Ends the wait for a place at the door.</param>
    public Task<StationReply> TurnAsync(TurnChange change, int? seen, CancellationToken cancellationToken) =>
        SendAsync(new StationMessage.Turn(change, seen), cancellationToken);

    /// <summary>Goes on with the bowlers that the lane was left with, whoever's turn it was.</summary>
    public Task<StationReply> GoOnTogetherAsync(Lineup lineup, CancellationToken cancellationToken) =>
        SendAsync(new StationMessage.GoOnTogether(lineup), cancellationToken);

    /// <summary>What is over of a bowler is not shown any more; refused while a session of the bowler is open here.</summary>
    public Task<StationReply> ForgetAsync(string bowler, CancellationToken cancellationToken) =>
        SendAsync(new StationMessage.Forget(bowler), cancellationToken);

    /// <summary>What may be shown of a name was changed: a new picture is made.</summary>
    public Task<StationReply> RenameAsync(CancellationToken cancellationToken) => SendAsync(new StationMessage.NamesChanged(), cancellationToken);

    /// <summary>A shot was seen, of whoever has the turn.</summary>
    public Task<StationReply> ThrowAsync(Shot shot, CancellationToken cancellationToken) => ThrowAsync(shot, null, null, cancellationToken);

    /// <summary>
    /// A shot of a certain session, logged while a certain aim was shown: what the station has by now may be another session (or the
    /// turn another's), or another target, and then the shot is not for it.
    /// </summary>
    /// <param name="shot">The shot.</param>
    /// <param name="sessionId">The session; null for whichever there is.</param>
    /// <param name="aimKey">The <see cref="AimKey"/> of the aim that was shown; null for whichever is shown.</param>
    /// <param name="cancellationToken">Ends the wait for a place at the door.</param>
    public Task<StationReply> ThrowAsync(Shot shot, string? sessionId, string? aimKey, CancellationToken cancellationToken) =>
        FollowAsync(new StationMessage.Follow(new SessionInput.ShotThrown(_clock.GetUtcNow(), shot), sessionId) { AimKey = aimKey }, cancellationToken);

    /// <summary>A shot or a coach's action.</summary>
    public Task<StationReply> FollowAsync(SessionInput input, CancellationToken cancellationToken) => FollowAsync(input, null, cancellationToken);

    /// <summary>A shot or a coach's action, of a certain session.</summary>
    /// <param name="input">What.</param>
    /// <param name="sessionId">For which session of the lane; null is the one that has the turn.</param>
    /// <param name="cancellationToken">Ends the wait for a place at the door.</param>
    public Task<StationReply> FollowAsync(SessionInput input, string? sessionId, CancellationToken cancellationToken) =>
        FollowAsync(new StationMessage.Follow(input, sessionId), cancellationToken);

    private Task<StationReply> FollowAsync(StationMessage.Follow follow, CancellationToken cancellationToken) =>
        _meters is not null && follow.Input is SessionInput.ShotThrown ? MeasuredAsync(follow, _meters, cancellationToken) : SendAsync(follow, cancellationToken);

    /// <summary>
    /// Every new picture from now on, and the present one first, until the station is stopped. A slow reader gets the newest and
    /// skips those between: the channel holds one and drops the older.
    /// </summary>
    public async IAsyncEnumerable<SessionSnapshot> WatchAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var channel = Channel.CreateBounded<SessionSnapshot>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        lock (_watchersLock)
        {
            _watchers.Add(channel);
            channel.Writer.TryWrite(_snapshot);
            if (_stopped)
            {
                channel.Writer.Complete();
            }
        }

        try
        {
            await foreach (var snapshot in channel.Reader.ReadAllAsync(cancellationToken).ConfigureAwait(false))
            {
                yield return snapshot;
            }
        }
        finally
        {
            lock (_watchersLock)
            {
                _watchers.Remove(channel);
            }
        }
    }

    /// <summary>
    /// Reads the door until cancelled; what is being kept then is still kept and answered as such, what waits is answered as not
    /// kept. Run once, by the hosted service.
    /// </summary>
    public async Task RunAsync(CancellationToken cancellationToken)
    {
        try
        {
            await foreach (var message in _door.Reader.ReadAllAsync(cancellationToken).ConfigureAwait(false))
            {
                await AnswerAsync(message, cancellationToken).ConfigureAwait(false);
            }
        }
        finally
        {
            _door.Writer.TryComplete();
            while (_door.Reader.TryRead(out var waiting))
            {
                waiting.Reply.SetResult(new StationReply.NotKept(Stopped));
            }

            lock (_watchersLock)
            {
                _stopped = true;
                _watchers.ForEach(watcher => watcher.Writer.TryComplete());
            }
        }
    }

    private async Task<StationReply> MeasuredAsync(StationMessage.Follow shot, StationMeters meters, CancellationToken cancellationToken)
    {
        var since = _clock.GetTimestamp();
        using var trace = meters.Shot(Number);
        var reply = await SendAsync(shot with { Trace = trace?.Context ?? default }, cancellationToken).ConfigureAwait(false);
        meters.Answered(Number, _clock.GetElapsedTime(since), reply);
        return reply;
    }

    private async Task<StationReply> SendAsync(StationMessage message, CancellationToken cancellationToken)
    {
        try
        {
            await _door.Writer.WriteAsync(message, cancellationToken).ConfigureAwait(false);
        }
        catch (ChannelClosedException)
        {
            return new StationReply.NotKept(Stopped);
        }

        return await message.Reply.Task.ConfigureAwait(false);
    }

    [SuppressMessage("Design", "CA1031:Do not catch general exception types", Justification = "The sender gets it: whatever it is, the lane goes on.")]
    private async Task AnswerAsync(StationMessage message, CancellationToken cancellationToken)
    {
        try
        {
            cancellationToken.ThrowIfCancellationRequested();
            message.Reply.SetResult(await HandleAsync(message, cancellationToken).ConfigureAwait(false));
        }
        catch (StoreUnavailableException exception)
        {
            message.Reply.SetResult(new StationReply.NotKept(exception.Message));
        }
        catch (OperationCanceledException)
        {
            message.Reply.SetResult(new StationReply.NotKept(Stopped));
        }
        catch (Exception exception)
        {
            message.Reply.SetException(exception);
        }
    }

    private Task<StationReply> HandleAsync(StationMessage message, CancellationToken cancellationToken) => message switch
    {
        StationMessage.Start start => HandleStartAsync(start),
        StationMessage.GoOn goOn => HandleGoOnAsync(goOn, cancellationToken),
        StationMessage.Follow follow => HandleInputAsync(follow),
        StationMessage.Join join => HandleJoinAsync(join),
        StationMessage.Turn turn => Task.FromResult(HandleTurn(turn)),
        StationMessage.GoOnTogether together => HandleGoOnTogetherAsync(together.Lineup, cancellationToken),
        StationMessage.Forget forget => Task.FromResult(HandleForget(forget.Bowler)),
        StationMessage.NamesChanged => Task.FromResult<StationReply>(HandleNamesChanged()),
        _ => throw new InvalidOperationException($"unknown message {message}"),
    };

    private async Task<StationReply> HandleStartAsync(StationMessage.Start start)
    {
        if (IsInUse)
        {
            return new StationReply.Refused($"station {Number} has a session: end it first");
        }

        var opening = SessionCore.Open(start.Setup, start.Drill.Script);
        if (opening.State is not { } state)
        {
            return new StationReply.Refused(string.Join("; ", opening.Problems));
        }

        await _store.CreateAsync(start.Setup, start.Drill, CancellationToken.None).ConfigureAwait(false);
        Part();
        Show(new SessionInProgress(state));
        return new StationReply.Kept(null);
    }

    private async Task<StationReply> HandleGoOnAsync(StationMessage.GoOn goOn, CancellationToken cancellationToken)
    {
        if (IsInUse)
        {
            return new StationReply.Refused($"station {Number} has a session: end it first");
        }

        if (goOn.Stored.Setup.Station != Number)
        {
            return new StationReply.Refused($"session {goOn.Stored.Setup.SessionId} is of station {goOn.Stored.Setup.Station}: go on with it there");
        }

        var restored = await SessionRestorer.RestoreAsync(goOn.Stored, _store, cancellationToken).ConfigureAwait(false);
        if (restored.Session is not { } session)
        {
            return new StationReply.Refused(restored.Problem!);
        }

        Part();
        Show(session);
        return new StationReply.Kept(null);
    }

    private async Task<StationReply> HandleJoinAsync(StationMessage.Join join)
    {
        if (_lineups is not { } lineups)
        {
            return new StationReply.Refused($"station {Number} keeps no order of bowlers: use aimtrainer serve");
        }

        var opening = SessionCore.Open(join.Setup, join.Drill.Script);
        if (opening.State is not { } state)
        {
            return new StationReply.Refused(string.Join("; ", opening.Problems));
        }

        var before = IsInUse ? _lineup ?? Alone() : TurnRule.Empty(Number);
        var outcome = TurnRule.Apply(before, new TurnChange.Join(join.Setup.SessionId, join.Setup.Bowler));
        if (outcome.Refusal is { } refusal)
        {
            return new StationReply.Refused(refusal);
        }

        // First the order, then the session: a place whose session was never made is left out by a restart, but a session that is in no
        // order would be open for ever.
        lineups.Keep(outcome.Lineup, durable: true);
        try
        {
            await _store.CreateAsync(join.Setup, join.Drill, CancellationToken.None).ConfigureAwait(false);
        }
        catch (StoreUnavailableException)
        {
            lineups.Keep(before, durable: false);
            throw;
        }

        if (!IsInUse)
        {
            _together.Clear();
            _last = null;
        }
        else if (_lineup is null)
        {
            _together[_session!.State.Setup.SessionId] = _session;
            _last = LanePicture.LastOf(_together.Values);
        }

        _together[join.Setup.SessionId] = new SessionInProgress(state);
        _lineup = outcome.Lineup;
        ShowWhoThrows();
        return new StationReply.Kept(null);
    }

    private StationReply HandleTurn(StationMessage.Turn turn)
    {
        if (_lineup is not { } lineup)
        {
            return new StationReply.Refused($"nobody takes turns on lane {Number}: a second bowler must join first");
        }

        if (turn.Seen is { } seen && seen != lineup.Number)
        {
            return new StationReply.Refused("the order changed meanwhile: look at it, and do it again when it is still meant");
        }

        var outcome = TurnRule.Apply(lineup, turn.Change);
        if (outcome.Refusal is { } refusal)
        {
            return new StationReply.Refused(refusal);
        }

        _lineups!.Keep(outcome.Lineup, durable: true);
        _lineup = outcome.Lineup;
        ShowWhoThrows();
        return new StationReply.Kept(null);
    }

    private async Task<StationReply> HandleGoOnTogetherAsync(Lineup lineup, CancellationToken cancellationToken)
    {
        if (IsInUse)
        {
            return new StationReply.Refused($"station {Number} has a session: end it first");
        }

        if (lineup.Station != Number || _lineups is null)
        {
            return new StationReply.Refused($"the order is of lane {lineup.Station}: go on with it there");
        }

        var together = new Dictionary<string, SessionInProgress>(StringComparer.Ordinal);
        foreach (var place in lineup.Places)
        {
            if (await _store.FindAsync(place.SessionId, cancellationToken).ConfigureAwait(false) is not { } stored)
            {
                continue;
            }

            var restored = await SessionRestorer.RestoreAsync(stored, _store, cancellationToken).ConfigureAwait(false);
            if (restored.Session is not { } session)
            {
                return new StationReply.Refused(restored.Problem!);
            }

            together.Add(place.SessionId, session);
        }

        if (together.Count == 0)
        {
            _lineups.Drop(Number);
            return new StationReply.Refused("no session of that order is in the record");
        }

        _together.Clear();
        foreach (var (id, session) in together)
        {
            _together.Add(id, session);
        }

        _last = LanePicture.LastOf(_together.Values);
        _lineup = LanePicture.Settled(lineup, _together);
        ShowWhoThrows();
        return new StationReply.Kept(null);
    }

    private StationReply HandleForget(string bowler)
    {
        bool Is(SessionInProgress session) => BowlerName.Same(session.State.Setup.Bowler, bowler);
        if (_together.Values.Append(_session).OfType<SessionInProgress>().Any(session => Is(session) && session.State.Phase != SessionPhase.Ended))
        {
            return new StationReply.Refused($"a session of this bowler is open on lane {Number}: end it first");
        }

        if (_lineup is { } lineup && _together.Values.Any(Is))
        {
            var gone = _together.Where(one => Is(one.Value)).Select(one => one.Key).ToHashSet(StringComparer.Ordinal);
            var left = LanePicture.Without(lineup, gone);
            if (left.Places.Count == 0)
            {
                Part();
            }
            else
            {
                _lineups!.Keep(left, durable: true);
                _lineup = left;
                foreach (var id in gone)
                {
                    _together.Remove(id);
                }
            }

            _last = _last is { } last && gone.Contains(last.SessionId) ? null : _last;
        }

        if (_session is { } shown && Is(shown))
        {
            _session = null;
        }

        ShowWhoThrows();
        return new StationReply.Kept(null);
    }

    private StationReply.Kept HandleNamesChanged()
    {
        Publish();
        return new StationReply.Kept(null);
    }

    private async Task<StationReply> HandleInputAsync(StationMessage.Follow follow)
    {
        var (input, sessionId) = follow;
        if (_session is not { } turn)
        {
            return new StationReply.Refused($"station {Number} has no session: start one first");
        }

        // Looked at here, where nothing can come between: the session and the aim that are compared are those of the next lines.
        // On a shared lane the same shot may come again when the turn is another's: it must not become that one's.
        if (Seen(turn, input) is { } before)
        {
            return new StationReply.TakenBefore(before);
        }

        if (Find(sessionId, turn) is not { } session)
        {
            return new StationReply.Refused($"session {FoundText.Short(sessionId!)} is not on station {Number} now, {turn.State.Setup.SessionId} is: left out");
        }

        if (input is SessionInput.ShotThrown && _lineup is { } order)
        {
            if (order.Throws is not { } throws)
            {
                return new StationReply.Refused($"nobody has the turn on lane {Number}: let somebody return or join first");
            }

            if (session != turn)
            {
                return new StationReply.Refused(
                    $"it is the turn of {throws.Bowler}, whose target is shown; this shot is {session.State.Setup.Bowler}'s: left out. Give {session.State.Setup.Bowler} the turn before such a shot");
            }
        }

        if (follow.AimKey is { } aimKey && session.State.Shown is { } due && AimKey.Of(due) != aimKey)
        {
            return new StationReply.OtherAim(due);
        }

        var step = SessionCore.Apply(session.State, input);
        if (step.Refusal is { } refusal)
        {
            return new StationReply.Refused(refusal);
        }

        if (step.Events.Count == 0)
        {
            return new StationReply.Kept(null);
        }

        var entry = new LogEntry(session.Sequence + 1, input, step.Events);

        // Never cancelled: whether it was kept would not be known, and the sender is told exactly that.
        using (_meters?.Keep(follow.Trace))
        {
            await _store.AppendAsync(session.State.Setup.SessionId, entry, CancellationToken.None).ConfigureAwait(false);
        }

        var shots = session.State.LastNumber;
        session.Accept(entry, step.State);
        if (_lineup is null)
        {
            Show(session);
        }
        else
        {
            GoRound(session, shots);
        }

        return new StationReply.Kept(entry) { SessionId = session.State.Setup.SessionId };
    }

    private bool IsInUse => _session is { State.Phase: not SessionPhase.Ended } || _together.Values.Any(session => session.State.Phase != SessionPhase.Ended);

    private string? Seen(SessionInProgress turn, SessionInput input) =>
        turn.HasSeen(input) ? turn.State.Setup.SessionId : _together.FirstOrDefault(one => one.Value.HasSeen(input)).Key;

    private SessionInProgress? Find(string? sessionId, SessionInProgress turn) =>
        sessionId is null || sessionId == turn.State.Setup.SessionId ? turn : _together.GetValueOrDefault(sessionId);

    /// <summary>The order of a bowler who is alone until now.</summary>
    private Lineup Alone() => TurnRule.Apply(
        TurnRule.Empty(Number), new TurnChange.Join(_session!.State.Setup.SessionId, _session.State.Setup.Bowler, _session.State.LastNumber)).Lineup;

    /// <summary>The bowlers of the lane are done with one another.</summary>
    private void Part()
    {
        if (_lineup is not null)
        {
            try
            {
                _lineups!.Drop(Number);
            }
            catch (StoreUnavailableException)
            {
                // An order whose sessions are all over is not gone on with, so it may lie there.
            }
        }

        (_lineup, _last) = (null, null);
        _together.Clear();
    }

    private void GoRound(SessionInProgress session, int shotsBefore)
    {
        if (session.State.LastNumber > shotsBefore && session.State.FindShot(session.State.LastNumber) is { } shot)
        {
            _last = LanePicture.ThrowOf(session.State.Setup, shot);
        }

        var settled = LanePicture.Settled(_lineup!, _together);
        if (settled != _lineup)
        {
            _lineup = settled;
            try
            {
                _lineups!.Keep(settled, durable: false);
            }
            catch (StoreUnavailableException)
            {
                // The shot is in the record, and with it whose turn it is: a restart works it out again.
            }
        }

        ShowWhoThrows();
    }

    private void ShowWhoThrows()
    {
        if (_lineup is { } lineup)
        {
            _session = LanePicture.Shown(lineup, _together, _session);
        }

        Publish();
    }

    private void Show(SessionInProgress session)
    {
        _session = session;
        Publish();
    }

    private void Publish()
    {
        lock (_watchersLock)
        {
            _snapshot = LanePicture.Of(Number, _session, _lineup, _together, _last, _names);
            foreach (var watcher in _watchers)
            {
                watcher.Writer.TryWrite(_snapshot);
            }
        }
    }
}
