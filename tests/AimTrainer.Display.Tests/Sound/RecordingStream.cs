using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Display.Tests;

/// <summary>What a device was given, and when.</summary>
internal sealed class RecordingStream(FakeTimeProvider clock) : Stream
{
    private readonly List<(TimeSpan At, byte[] Bytes)> _written = [];
    private readonly long _startedAt = clock.GetTimestamp();

    public bool IsFull { get; set; }

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => _written.Sum(piece => (long)piece.Bytes.Length);

    public override long Position { get => Length; set => throw new NotSupportedException(); }

    /// <summary>The first sample that is not zero at or after a moment: when the device was given it, and when it plays it; null when there is none.</summary>
    public (TimeSpan Given, TimeSpan Heard)? FirstSound(TimeSpan after)
    {
        var frame = 0L;
        foreach (var (at, bytes) in _written)
        {
            for (var i = 0; i < bytes.Length; i += 4, frame++)
            {
                if (at >= after && BitConverter.ToInt32(bytes, i) != 0)
                {
                    return (at, SoundFormat.Time(frame));
                }
            }
        }

        return null;
    }

    /// <summary>The first moment from which on the device plays exactly these samples; null when it never does.</summary>
    public TimeSpan? FirstMatch(ReadOnlySpan<byte> samples)
    {
        var all = _written.SelectMany(piece => piece.Bytes).ToArray();
        var found = all.AsSpan().IndexOf(samples);
        return found < 0 ? null : SoundFormat.Time(found / 4);
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (IsFull)
        {
            throw new IOException("no space left");
        }

        _written.Add((clock.GetElapsedTime(_startedAt), buffer.ToArray()));
    }

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
