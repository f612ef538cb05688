using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Feeds;

/// <summary>
/// Takes shots over TCP, one JSON object a line (<c>docs/feeds.md</c>), and answers each line once it is kept. Every connection is
/// read by itself, one line at a time, so that one that floods or does not read its answers holds up nobody else.
/// </summary>
public sealed class LineFeed : BackgroundService, IFeedWatch
{
    private readonly LineFeedSettings _settings;
    private readonly IReadOnlyDictionary<int, Station> _stations;
    private readonly ISessionStore _store;
    private readonly IFeedGate _gate;
    private readonly TimeProvider _clock;
    private readonly LineFeedEvents _events;
    private readonly Dictionary<int, StationFeed> _feeds;
    private readonly ConcurrentDictionary<Task, byte> _open = new();
    private readonly ConcurrentDictionary<IPAddress, int> _from = new();
    private readonly TcpListener _listener;

    /// <summary>Makes one that listens at once; lines are taken when the host runs.</summary>
    /// <param name="settings">Where, and the limits.</param>
    /// <param name="stations">The stations that lines may be for.</param>
    /// <param name="store">Where answers to shots that came before are looked up.</param>
    /// <param name="gate">Who may send.</param>
    /// <param name="clock">The time.</param>
    /// <param name="events">Who is told of what happens.</param>
    /// <exception cref="SocketException">The address cannot be had.</exception>
    public LineFeed(
        LineFeedSettings settings, IReadOnlyList<Station> stations, ISessionStore store, IFeedGate gate, TimeProvider clock, LineFeedEvents events)
    {
        (_settings, _store, _gate, _clock, _events) = (settings, store, gate, clock, events);
        _stations = stations.ToDictionary(station => station.Number);
        _feeds = stations.ToDictionary(station => station.Number, _ => new StationFeed(settings.SilentAfter, clock));
        _listener = new TcpListener(settings.Address);
        _listener.Start();
        Address = (IPEndPoint)_listener.LocalEndpoint;
    }

    /// <summary>Where it listens.</summary>
    public IPEndPoint Address { get; }

    /// <inheritdoc/>
    public FeedStatus? Of(int station) => _feeds.TryGetValue(station, out var feed) ? feed.Status() : null;

    /// <inheritdoc/>
    public override void Dispose()
    {
        _listener.Dispose();
        base.Dispose();
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            while (true)
            {
                Socket socket;
                try
                {
                    socket = await _listener.AcceptSocketAsync(stoppingToken).ConfigureAwait(false);
                }
                catch (SocketException exception)
                {
                    // One caller's connection, or too many open files for a moment; the port itself still holds.
                    _events.Notice($"lines: a connection could not be taken ({exception.Message})");
                    await Task.Delay(TimeSpan.FromMilliseconds(100), _clock, stoppingToken).ConfigureAwait(false);
                    continue;
                }

                var task = ServeAsync(socket, stoppingToken);
                _open.TryAdd(task, 0);
                _ = task.ContinueWith(done => _open.TryRemove(done, out _), CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Asked to stop.
        }
        finally
        {
            _listener.Stop();
            await Task.WhenAll(_open.Keys).ConfigureAwait(false);
        }
    }

    private async Task ServeAsync(Socket socket, CancellationToken cancellationToken)
    {
        using (socket)
        {
            try
            {
                socket.NoDelay = true;
                AskIfThere(socket);
                var stream = new NetworkStream(socket, ownsSocket: false);
                await using (stream.ConfigureAwait(false))
                {
                    var connection = new LineConnection(stream, (IPEndPoint)socket.RemoteEndPoint!, _settings, _clock);
                    await using (connection.ConfigureAwait(false))
                    {
                        var address = connection.From.Address;
                        var ofAddress = _from.AddOrUpdate(address, 1, static (_, count) => count + 1);
                        try
                        {
                            if (_open.Count >= _settings.MostConnections || ofAddress > _settings.MostFromOneAddress)
                            {
                                var (most, where) = ofAddress > _settings.MostFromOneAddress ? (_settings.MostFromOneAddress, $" from {address}") : (_settings.MostConnections, "");
                                await connection.AnswerAsync(
                                    LineAnswer.Refused(null, $"there are {most} connections{where} already: close one, or try again later", true), cancellationToken).ConfigureAwait(false);
                                return;
                            }

                            await TakeAsync(connection, cancellationToken).ConfigureAwait(false);
                        }
                        finally
                        {
                            Forget(address);
                        }
                    }
                }
            }
            catch (Exception exception) when (exception is IOException or SocketException or OperationCanceledException or ObjectDisposedException or StoreUnavailableException)
            {
                // It left, or was cut off; what it had not been answered it sends again.
            }
            catch (Exception exception) when (exception is InvalidDataException or UnauthorizedAccessException)
            {
                _events.Notice($"lines: a connection was closed, because who may send could not be read: {exception.Message}");
            }
        }
    }

    private void Forget(IPAddress address)
    {
        if (_from.AddOrUpdate(address, 0, static (_, count) => count - 1) == 0)
        {
            _from.TryRemove(new KeyValuePair<IPAddress, int>(address, 0));
        }
    }

    private void AskIfThere(Socket socket)
    {
        socket.SetSocketOption(SocketOptionLevel.Socket, SocketOptionName.KeepAlive, true);
        socket.SetSocketOption(SocketOptionLevel.Tcp, SocketOptionName.TcpKeepAliveTime, (int)_settings.AskIfThereAfter.TotalSeconds);
        socket.SetSocketOption(SocketOptionLevel.Tcp, SocketOptionName.TcpKeepAliveInterval, 10);
        socket.SetSocketOption(SocketOptionLevel.Tcp, SocketOptionName.TcpKeepAliveRetryCount, 5);
    }

    private async Task TakeAsync(LineConnection connection, CancellationToken cancellationToken)
    {
        if (await FirstAsync(connection, cancellationToken).ConfigureAwait(false) is not { } first)
        {
            return;
        }

        var (entry, line) = first;
        var number = entry.Station!.Value;
        var feed = _feeds[number];
        feed.Came();
        _events.Notice($"lines: {connection.From} sends for station {number}");
        try
        {
            var refusedInARow = 0;
            var next = line is null ? await connection.NextAsync(cancellationToken).ConfigureAwait(false) : (line, false);
            for (; next is { } now; next = await connection.NextAsync(cancellationToken).ConfigureAwait(false))
            {
                if (!_gate.Holds(entry))
                {
                    await connection.AnswerAsync(
                        LineAnswer.Refused(null, "the token was revoked: ask the coach for a new one"), cancellationToken).ConfigureAwait(false);
                    return;
                }

                feed.Line();
                var (answer, refused) = now.TooLong
                    ? (LineAnswer.Refused(null, $"a line of more than {_settings.LongestLine} bytes; one JSON object a line, at most {_settings.LongestLine} bytes"), true)
                    : await TakeAsync(_stations[number], feed, now.Line, connection.From, cancellationToken).ConfigureAwait(false);
                if (refused)
                {
                    feed.Refused();
                }

                refusedInARow = refused ? refusedInARow + 1 : 0;
                await connection.AnswerAsync(answer, cancellationToken).ConfigureAwait(false);
                if (refusedInARow >= _settings.MostRefusedInARow)
                {
                    _events.Notice($"lines: {connection.From} was cut off after {refusedInARow} refused lines in a row");
                    return;
                }
            }
        }
        finally
        {
            feed.Left();
            _events.Notice($"lines: {connection.From} left station {number}");
        }
    }

    /// <summary>The first line: a hello, or for a program with one station at once a shot.</summary>
    /// <returns>The station and the line, when it is a shot; null when it is not let in.</returns>
    private async Task<(FeedEntry Entry, byte[]? Line)?> FirstAsync(LineConnection connection, CancellationToken cancellationToken)
    {
        if (await connection.FirstAsync(cancellationToken).ConfigureAwait(false) is not { } first)
        {
            return null;
        }

        // A browser can be made to send a form to any port; its first line is never an object, and so nothing after it is looked at.
        var file = JsonFile.Read("first line", first.Line);
        if (first.TooLong || file.Root is not { } root || ObjectReader.Of(file, root) is not { } json)
        {
            await connection.AnswerAsync(
                LineAnswer.Refused(null, "the first line is not a JSON object: {\"hello\": {\"station\": 1}} or a shot, one object a line, UTF-8"), cancellationToken).ConfigureAwait(false);
            return null;
        }

        var isHello = json.Has(LineHello.Name);
        var hello = isHello ? LineHello.Read(file, json) : new LineHello(null, null);
        var entry = hello is null ? FeedEntry.No(InWords(file.Problems)) : _gate.Enter(hello.Token, hello.Station, connection.IsOfThisMachine, connection.From.Address.ToString());
        if (entry.Station is not { } number || !_stations.TryGetValue(number, out var station))
        {
            _events.Notice($"lines: {connection.From} was not let in");
            await connection.AnswerAsync(LineAnswer.Refused(null, entry.Why ?? $"station: found {entry.Station}; allowed: {string.Join(", ", _stations.Keys)}"), cancellationToken).ConfigureAwait(false);
            return null;
        }

        if (isHello)
        {
            await connection.AnswerAsync(LineAnswer.Welcome(number, station.Snapshot.Setup?.SessionId), cancellationToken).ConfigureAwait(false);
        }

        return (entry, isHello ? null : first.Line);
    }

    private async Task<(byte[] Answer, bool Refused)> TakeAsync(Station station, StationFeed feed, byte[] line, EndPoint from, CancellationToken cancellationToken)
    {
        if (line.AsSpan().SequenceEqual("{\"beat\":true}"u8) || line.AsSpan().SequenceEqual("{\"beat\": true}"u8))
        {
            return (LineAnswer.Beat(station.Snapshot.Setup?.SessionId), false);
        }

        var setup = station.Snapshot.Setup;
        var read = ShotJson.Read("line", line, setup?.Lane ?? LaneProfileReader.Default, ShotSource.Sensor);
        if (read.Value is not { } received)
        {
            return (LineAnswer.Refused(null, InWords(read.Problems)), true);
        }

        if (received.Shot.Id is not { } id)
        {
            return (LineAnswer.Refused(null, "$.id: found none; allowed: a name for this shot that no other shot has, so that it counts once however often it is sent"), true);
        }

        if (setup is null)
        {
            return (LineAnswer.Refused(id, $"station {station.Number} has no session: start one first", sendAgain: true), true);
        }

        if (ShotOwner.WhyNotOf(setup, received) is { } notHis)
        {
            return (LineAnswer.Refused(id, notHis), true);
        }

        // A shot that says whose it is goes to the session that was looked at: on a shared lane the turn may pass before it comes to the door.
        switch (await station.ThrowAsync(received.Shot, setup.SessionId, null, cancellationToken).ConfigureAwait(false))
        {
            case StationReply.Kept { Entry: { } entry } kept:
                feed.Kept();
                _events.Kept(station.Number, entry, from);
                return (LineAnswer.Kept(again: false, id, kept.SessionId ?? setup.SessionId, entry), false);
            case StationReply.TakenBefore before:
                return await _store.FindShotAsync(before.SessionId, id, cancellationToken).ConfigureAwait(false) is { } first
                    ? (LineAnswer.Kept(again: true, id, before.SessionId, first), false)
                    : (LineAnswer.Refused(id, "a shot that is equal to it in all but its id came before; it was taken once"), true);
            case StationReply.Refused refused:
                return (LineAnswer.Refused(id, refused.Why), true);
            case StationReply.NotKept notKept:
                return (LineAnswer.Refused(id, $"not kept, so it does not count: {notKept.Why}", sendAgain: true), true);
            default:
                throw new InvalidOperationException("a shot that was kept has a step in the log");
        }
    }

    private static string InWords(ValueList<FileProblem> problems) => string.Join(
        "; ", problems.AsEnumerable().Take(5).Select(problem => $"{(problem.Path.Length > 0 ? problem.Path : "$")}: found {problem.Found}; allowed: {problem.Allowed}"));
}
