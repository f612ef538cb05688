using System.Net;
using System.Net.Sockets;

namespace AimTrainer.Chain.Tests;

/// <summary>A bad line between a center and its chain: it delays, cuts connections in either direction, and delivers requests twice.</summary>
internal sealed class ChaosProxy : IDisposable
{
    private const int LongerThanQuestions = 4096;

    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly Chance _chance;
    private readonly List<Socket> _open = [];
    private long _cut;
    private long _doubled;
    private long _passed;
    private long _heavy;
    private volatile int _serverPort;
    private volatile bool _isWell;

    public ChaosProxy(int serverPort, ulong seed)
    {
        _serverPort = serverPort;
        _chance = new Chance(seed);
        _listener.Start();
        Port = ((IPEndPoint)_listener.LocalEndpoint).Port;
        _ = AcceptAsync();
    }

    public int Port { get; }

    /// <summary>Connections that were cut so far.</summary>
    public long Cut => Interlocked.Read(ref _cut);

    /// <summary>Connections whose bytes were delivered a second time.</summary>
    public long Doubled => Interlocked.Read(ref _doubled);

    /// <summary>Pieces that went on toward the chain: by this a moment in the middle of a delivery is named, on a machine of any speed.</summary>
    public long Passed => Interlocked.Read(ref _passed);

    /// <summary>Those of them that are so long that only steps are.</summary>
    public long Heavy => Interlocked.Read(ref _heavy);

    /// <summary>Whether it lets everything through from now on.</summary>
    public bool IsWell
    {
        get => _isWell;
        set => _isWell = value;
    }

    /// <summary>Where the chain listens now: it may have been started anew.</summary>
    public int ServerPort
    {
        get => _serverPort;
        set => _serverPort = value;
    }

    /// <summary>The chain is nowhere any more: what is open is cut, what is new goes to a port where nobody listens.</summary>
    public void GoDown()
    {
        ServerPort = 1;
        lock (_open)
        {
            _open.ForEach(socket => socket.Dispose());
        }
    }

    public void Dispose()
    {
        _stop.Cancel();
        _listener.Dispose();
        _stop.Dispose();
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
            {
                _ = CarryAsync(await _listener.AcceptSocketAsync(_stop.Token));
            }
        }
        catch (Exception exception) when (exception is OperationCanceledException or ObjectDisposedException or SocketException)
        {
        }
    }

    private async Task CarryAsync(Socket client)
    {
        using var server = new Socket(SocketType.Stream, ProtocolType.Tcp);
        using (client)
        {
            try
            {
                if (!_isWell && _chance.Next() < 0.1)
                {
                    Interlocked.Increment(ref _cut);
                    return;
                }

                lock (_open)
                {
                    _open.Add(client);
                }

                await server.ConnectAsync(IPAddress.Loopback, _serverPort);
                var sent = new MemoryStream();
                var there = PassAsync(client, server, sent);
                var back = PassAsync(server, client, null);
                await Task.WhenAny(there, back);
            }
            catch (Exception exception) when (exception is SocketException or ObjectDisposedException)
            {
            }
        }
    }

    private async Task PassAsync(Socket from, Socket to, MemoryStream? sent)
    {
        var bytes = new byte[16384];
        try
        {
            while (await from.ReceiveAsync(bytes) is var count and > 0)
            {
                if (!_isWell)
                {
                    var what = _chance.Next();
                    if (what < 0.04)
                    {
                        // Part of it gets through, and then nothing more in either direction.
                        await to.SendAsync(bytes.AsMemory(0, (int)(count * _chance.Next())));
                        Interlocked.Increment(ref _cut);
                        from.Close();
                        to.Close();
                        return;
                    }

                    if (what < 0.2)
                    {
                        await Task.Delay(TimeSpan.FromMilliseconds(_chance.Next() * 20));
                    }
                }

                sent?.Write(bytes, 0, count);
                await to.SendAsync(bytes.AsMemory(0, count));
                if (sent is not null)
                {
                    Interlocked.Increment(ref _passed);
                    if (count > LongerThanQuestions)
                    {
                        Interlocked.Increment(ref _heavy);
                    }
                }

                if (sent is not null && !_isWell && _chance.Next() < 0.05)
                {
                    Interlocked.Increment(ref _doubled);
                    _ = AgainAsync(sent.ToArray());
                }
            }
        }
        catch (Exception exception) when (exception is SocketException or ObjectDisposedException)
        {
        }
    }

    /// <summary>Delivers everything that a connection has sent once more, on another one.</summary>
    private async Task AgainAsync(byte[] bytes)
    {
        try
        {
            using var server = new Socket(SocketType.Stream, ProtocolType.Tcp);
            await server.ConnectAsync(IPAddress.Loopback, _serverPort);
            await server.SendAsync(bytes);
            server.Shutdown(SocketShutdown.Send);
            var answer = new byte[16384];
            while (await server.ReceiveAsync(answer) > 0)
            {
            }
        }
        catch (Exception exception) when (exception is SocketException or ObjectDisposedException)
        {
        }
    }
}
