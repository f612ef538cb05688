using NAudio.Wave;

namespace AimTrainer.Display.Tests;

/// <summary>So many frames that count up, then the end.</summary>
internal sealed class EndingSamples(int frames) : IWaveProvider, IDisposable
{
    private readonly SemaphoreSlim _reads = new(0);
    private int _position;

    public WaveFormat WaveFormat => SoundFormat.Shorts;

    /// <summary>All the bytes there are.</summary>
    public byte[] Given { get; } = [.. Enumerable.Range(0, frames * 4).Select(i => (byte)(i * 7))];

    public int Read(Span<byte> buffer)
    {
        var count = Math.Min(buffer.Length, Given.Length - _position);
        Given.AsSpan(_position, count).CopyTo(buffer);
        _position += count;
        _reads.Release();
        return count;
    }

    /// <summary>Waits until it was read so many times.</summary>
    public async Task ReadAsync(int times)
    {
        for (var i = 0; i < times; i++)
        {
            Assert.True(await _reads.WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken));
        }
    }

    public void Dispose() => _reads.Dispose();
}
