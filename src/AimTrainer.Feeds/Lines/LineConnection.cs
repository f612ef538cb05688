using System.Net;
using System.Net.Sockets;

namespace AimTrainer.Feeds;

/// <summary>One connection: lines in, at a bounded pace, and an answer each out, with bounded patience.</summary>
internal sealed class LineConnection(NetworkStream stream, IPEndPoint from, LineFeedSettings settings, TimeProvider clock) : IAsyncDisposable
{
    private readonly LineReader _lines = new(stream, settings.LongestLine);
    private readonly LinePace _pace = new(settings.MostLinesASecond, clock);

    /// <summary>The other end.</summary>
    public IPEndPoint From => from;

    /// <summary>Whether the other end is on this machine.</summary>
    public bool IsOfThisMachine => IPAddress.IsLoopback(from.Address.IsIPv4MappedToIPv6 ? from.Address.MapToIPv4() : from.Address);

    /// <summary>The first line, which must come soon.</summary>
    public async Task<(byte[] Line, bool TooLong)?> FirstAsync(CancellationToken cancellationToken)
    {
        using var patience = new CancellationTokenSource(settings.HelloPatience, clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, patience.Token);
        return await _lines.NextAsync(either.Token).ConfigureAwait(false);
    }

    /// <summary>The next line, not before the pace allows; null when the other end is done.</summary>
    public async Task<(byte[] Line, bool TooLong)?> NextAsync(CancellationToken cancellationToken)
    {
        await _pace.WaitAsync(cancellationToken).ConfigureAwait(false);
        return await _lines.NextAsync(cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Sends an answer.</summary>
    /// <exception cref="OperationCanceledException">The other end leaves its answers lying.</exception>
    public async Task AnswerAsync(byte[] answer, CancellationToken cancellationToken)
    {
        using var patience = new CancellationTokenSource(settings.AnswerPatience, clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, patience.Token);
        await stream.WriteAsync(answer, either.Token).ConfigureAwait(false);
    }

    public ValueTask DisposeAsync() => _lines.DisposeAsync();
}
