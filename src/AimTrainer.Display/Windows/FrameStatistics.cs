namespace AimTrainer.Display;

/// <summary>How long the frames of a loop took: the last <see cref="Kept"/> of them. Written by the loop's thread without allocating.</summary>
public sealed class FrameStatistics
{
    /// <summary>How many frames are remembered.</summary>
    public const int Kept = 8192;

    private readonly Lock _lock = new();
    private readonly long[] _waits = new long[Kept];
    private long _frames;
    private long _waitsSeen;

    /// <summary>Frames submitted so far, of all windows together.</summary>
    public long Frames => Interlocked.Read(ref _frames);

    /// <summary>
    /// From the news to the submitted frame that shows it (the buffers swapped), for each frame that news caused; in the order of
    /// time. News that came while a frame was drawn is counted from when it came.
    /// </summary>
    public IReadOnlyList<TimeSpan> NewsToSubmitted()
    {
        lock (_lock)
        {
            var count = (int)Math.Min(_waitsSeen, Kept);
            return [.. Enumerable.Range(0, count).Select(i => TimeSpan.FromTicks(_waits[(_waitsSeen - count + i) % Kept]))];
        }
    }

    internal void FrameSubmitted() => Interlocked.Increment(ref _frames);

    internal void NewsSubmitted(TimeSpan wait)
    {
        lock (_lock)
        {
            _waits[_waitsSeen++ % Kept] = wait.Ticks;
        }
    }
}
