using System.Net;
using System.Net.Sockets;
using System.Text;

namespace AimTrainer.Store.Tests;

/// <summary>Stands between the program and the server, and cuts the line when told.</summary>
internal sealed class CuttingProxy : IDisposable
{
    private readonly int _serverPort;
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly List<Socket> _open = [];
    private volatile string? _cutAfter;
    private volatile bool _down;

    public CuttingProxy(int serverPort)
    {
        _serverPort = serverPort;
        _listener.Start();
        Port = ((IPEndPoint)_listener.LocalEndpoint).Port;
        _ = AcceptAsync();
    }

    public int Port { get; }

    /// <summary>Whether new connections are cut at once.</summary>
    public bool IsDown
    {
        get => _down;
        set => _down = value;
    }

    /// <summary>Passes on the next bytes that hold this text, and cuts the line before anything comes back: the sender cannot know whether they arrived.</summary>
    /// <param name="text">The text.</param>
    /// <param name="goesDown">Whether new connections are cut from then on.</param>
    public void CutAfter(string text, bool goesDown = false)
    {
        GoesDown = goesDown;
        _cutAfter = text;
    }

    private bool GoesDown { get; set; }

    public void Dispose()
    {
        _stop.Cancel();
        _listener.Dispose();
        lock (_open)
        {
            _open.ForEach(socket => socket.Dispose());
        }

        _stop.Dispose();
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
            {
                var client = await _listener.AcceptSocketAsync(_stop.Token);
                if (_down)
                {
                    client.Dispose();
                    continue;
                }

                var server = new Socket(SocketType.Stream, ProtocolType.Tcp);
                await server.ConnectAsync(IPAddress.Loopback, _serverPort);
                lock (_open)
                {
                    _open.Add(client);
                    _open.Add(server);
                }

                _ = PassAsync(client, server, looked: true);
                _ = PassAsync(server, client, looked: false);
            }
        }
        catch (Exception exception) when (exception is OperationCanceledException or ObjectDisposedException or SocketException)
        {
        }
    }

    private async Task PassAsync(Socket from, Socket to, bool looked)
    {
        var bytes = new byte[65536];
        try
        {
            while (await from.ReceiveAsync(bytes) is var count and > 0)
            {
                if (looked && _cutAfter is { } text && Encoding.ASCII.GetString(bytes, 0, count).Contains(text, StringComparison.Ordinal))
                {
                    _cutAfter = null;
                    _down = GoesDown;
                    from.Close();
                    await to.SendAsync(bytes.AsMemory(0, count));

                    // The server reads what came before the end of the line, and only then the end.
                    to.Shutdown(SocketShutdown.Send);
                    return;
                }

                await to.SendAsync(bytes.AsMemory(0, count));
            }

            to.Shutdown(SocketShutdown.Send);
        }
        catch (Exception exception) when (exception is SocketException or ObjectDisposedException)
        {
            from.Dispose();
            to.Dispose();
        }
    }
}
