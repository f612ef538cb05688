using System.Buffers;
using System.IO.Pipelines;

namespace AimTrainer.Feeds;

/// <summary>Cuts a stream of bytes into lines. A line that is too long is passed over to its end, in bounded memory; a half line at the end of the stream is left out.</summary>
internal sealed class LineReader : IAsyncDisposable
{
    private readonly PipeReader _pipe;
    private readonly int _longest;
    private bool _skipping;

    /// <param name="stream">Where the bytes come from.</param>
    /// <param name="longest">Longest line, bytes without its end.</param>
    public LineReader(Stream stream, int longest)
    {
        // One read never takes more than one buffer, and nothing is read while a line is being answered: what comes too fast waits on the wire.
        _pipe = PipeReader.Create(stream, new StreamPipeReaderOptions(bufferSize: 4096, minimumReadSize: 1024, leaveOpen: true));
        _longest = longest;
    }

    /// <summary>The next line.</summary>
    /// <returns>The line without its end, or that it was too long; null at the end of the stream.</returns>
    public async ValueTask<(byte[] Line, bool TooLong)?> NextAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            var read = await _pipe.ReadAsync(cancellationToken).ConfigureAwait(false);
            var buffer = read.Buffer;
            if (buffer.PositionOf((byte)'\n') is { } end)
            {
                var line = buffer.Slice(0, end);
                var tooLong = _skipping || line.Length > _longest + 1;
                var bytes = tooLong ? [] : Trimmed(line);
                _skipping = false;
                _pipe.AdvanceTo(buffer.GetPosition(1, end));
                return (bytes, tooLong || bytes.Length > _longest);
            }

            if (read.IsCompleted)
            {
                _pipe.AdvanceTo(buffer.End);
                return null;
            }

            if (_skipping || buffer.Length > _longest + 1)
            {
                _skipping = true;
                _pipe.AdvanceTo(buffer.End);
            }
            else
            {
                _pipe.AdvanceTo(buffer.Start, buffer.End);
            }
        }
    }

    public ValueTask DisposeAsync() => _pipe.CompleteAsync();

    private static byte[] Trimmed(ReadOnlySequence<byte> line)
    {
        var bytes = line.ToArray();
        return bytes is [.. var before, (byte)'\r'] ? before : bytes;
    }
}
