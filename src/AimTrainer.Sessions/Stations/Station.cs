using System.Diagnostics;
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
    private readonly Channel<StationMessage> _door = Channel.CreateBounded<StationMessage>(
        new BoundedChannelOptions(Capacity) { SingleReader = true, FullMode = BoundedChannelFullMode.Wait });

    private readonly Lock _watchersLock = new();
    private readonly List<Channel<SessionSnapshot>> _watchers = [];
    private readonly StationMeters? _meters;
    private SessionInProgress? _session;
    private volatile SessionSnapshot _snapshot;
    private bool _stopped;

    /// <summary>Makes a station; it works once <see cref="RunAsync"/> does.</summary>
    /// <param name="number">Its number, from 1.</param>
    /// <param name="store">Where its sessions are kept.</param>
    /// <param name="clock">The time.</param>
    /// <param name="meters">What measures it; null for nothing.</param>
    public Station(int number, ISessionStore store, TimeProvider clock, StationMeters? meters = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        Number = number;
        _store = store;
        _clock = clock;
        _meters = meters;
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

    /// <summary>A shot was seen.</summary>
    public Task<StationReply> ThrowAsync(Shot shot, CancellationToken cancellationToken) => ThrowAsync(shot, null, null, cancellationToken);

    /// <summary>
    /// A shot of a certain session, logged while a certain aim was shown: what the station has by now may be another session, or another
    /// target, and then the shot is not for it.
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
    /// <param name="sessionId">The session that it is meant for; null for whichever there is.</param>
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
        _ => throw new InvalidOperationException($"unknown message {message}"),
    };

    private async Task<StationReply> HandleStartAsync(StationMessage.Start start)
    {
        if (_session is { State.Phase: not SessionPhase.Ended })
        {
            return new StationReply.Refused($"station {Number} has a session: end it first");
        }

        var opening = SessionCore.Open(start.Setup, start.Drill.Script);
        if (opening.State is not { } state)
        {
            return new StationReply.Refused(string.Join("; ", opening.Problems));
        }

        await _store.CreateAsync(start.Setup, start.Drill, CancellationToken.None).ConfigureAwait(false);
        Show(new SessionInProgress(state));
        return new StationReply.Kept(null);
    }

    private async Task<StationReply> HandleGoOnAsync(StationMessage.GoOn goOn, CancellationToken cancellationToken)
    {
        if (_session is { State.Phase: not SessionPhase.Ended })
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

        Show(session);
        return new StationReply.Kept(null);
    }

    private async Task<StationReply> HandleInputAsync(StationMessage.Follow follow)
    {
        var input = follow.Input;
        if (_session is not { } session)
        {
            return new StationReply.Refused($"station {Number} has no session: start one first");
        }

        // Looked at here, where nothing can come between: the session and the aim that are compared are those of the next lines.
        if (follow.SessionId is { } meant && meant != session.State.Setup.SessionId)
        {
            return new StationReply.Refused($"this is of session {meant}, station {Number} has {session.State.Setup.SessionId}: left out");
        }

        if (session.HasSeen(input))
        {
            return new StationReply.TakenBefore();
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

        session.Accept(entry, step.State);
        Show(session);
        return new StationReply.Kept(entry);
    }

    private void Show(SessionInProgress session)
    {
        _session = session;
        lock (_watchersLock)
        {
            _snapshot = session.Picture();
            foreach (var watcher in _watchers)
            {
                watcher.Writer.TryWrite(_snapshot);
            }
        }
    }
}
