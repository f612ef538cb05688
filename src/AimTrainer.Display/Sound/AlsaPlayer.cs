using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>
/// Plays through ALSA on a thread of its own, a period at a time; the device's buffer is the only one. When the device fails for
/// good the player stops and says why in <see cref="PlaybackStopped"/>.
/// </summary>
public sealed class AlsaPlayer : IWavePlayer
{
    // ALSA's devices without a card ("null", "file") take whatever they are given at once. A real device is never this much too fast.
    private const double FastestPace = 1.02;
    private const int MostRecoveriesInARow = 8;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly IPcm _pcm;
    private readonly TimeProvider _clock;
    private readonly Thread _thread;
    private readonly ManualResetEventSlim _playing = new(false);
    private readonly ManualResetEventSlim _stopping = new(false);
    private IWaveProvider? _samples;
    private bool _started;

    /// <summary>Makes a player for an open device.</summary>
    /// <param name="pcm">The device; closed with the player.</param>
    /// <param name="clock">The time, for devices without a pace of their own.</param>
    public AlsaPlayer(IPcm pcm, TimeProvider clock)
    {
        (_pcm, _clock) = (pcm, clock);
        _thread = new Thread(Run) { IsBackground = true, Name = $"sound {pcm.Device}", Priority = ThreadPriority.AboveNormal };
    }

    /// <inheritdoc/>
    public event EventHandler<StoppedEventArgs>? PlaybackStopped;

    /// <inheritdoc/>
    public PlaybackState PlaybackState => !_started || _stopping.IsSet ? PlaybackState.Stopped : _playing.IsSet ? PlaybackState.Playing : PlaybackState.Paused;

    /// <inheritdoc/>
    public WaveFormat OutputWaveFormat => SoundFormat.Shorts;

    /// <summary>Always 1: the mixer sets the volume.</summary>
    /// <exception cref="NotSupportedException">Set to anything else.</exception>
    public float Volume
    {
        get => 1;
        set => _ = value == 1 ? value : throw new NotSupportedException("the mixer sets the volume");
    }

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The samples are not of <see cref="SoundFormat.Shorts"/>.</exception>
    public void Init(IWaveProvider waveProvider)
    {
        ArgumentNullException.ThrowIfNull(waveProvider);
        if (!waveProvider.WaveFormat.Equals(SoundFormat.Shorts))
        {
            throw new ArgumentException($"found {waveProvider.WaveFormat}; allowed: {SoundFormat.Shorts}", nameof(waveProvider));
        }

        _samples = waveProvider;
    }

    /// <inheritdoc/>
    /// <exception cref="InvalidOperationException">Not initialised, or stopped before.</exception>
    public void Play()
    {
        if (_samples is null || _stopping.IsSet)
        {
            throw new InvalidOperationException(_samples is null ? "Init comes before Play" : "a player plays once: open the device again");
        }

        _playing.Set();
        if (!_started)
        {
            _started = true;
            _thread.Start();
        }
    }

    /// <inheritdoc/>
    public void Pause() => _playing.Reset();

    /// <inheritdoc/>
    public void Stop()
    {
        _stopping.Set();
        _playing.Set();
    }

    /// <summary>Stops, and closes the device once the thread has left it.</summary>
    public void Dispose()
    {
        Stop();

        // A driver that hangs keeps its thread and its handle; the program does not wait for it.
        if (!_started || _thread == Thread.CurrentThread || _thread.Join(Patience))
        {
            _pcm.Dispose();
            _playing.Dispose();
            _stopping.Dispose();
        }
    }

    private void Run()
    {
        var problem = Play(_samples!);
        _stopping.Set();
        PlaybackStopped?.Invoke(this, new StoppedEventArgs(problem is null ? null : new IOException(problem)));
    }

    /// <returns>Why it had to stop; null when it was asked to or the samples ended.</returns>
    private string? Play(IWaveProvider samples)
    {
        var period = new byte[SoundFormat.Frames(SoundFormat.Period) * SoundFormat.Shorts.BlockAlign];
        var startedAt = _clock.GetTimestamp();
        var given = TimeSpan.Zero;
        while (true)
        {
            _playing.Wait();
            if (_stopping.IsSet)
            {
                return null;
            }

            var count = samples.Read(period);
            if (count == 0)
            {
                _pcm.Drain();
                return null;
            }

            if (Write(period.AsSpan(0, count)) is { } error)
            {
                return AlsaProblem.OfPlaying(_pcm.Device, error);
            }

            given += SoundFormat.Time(count / SoundFormat.Shorts.BlockAlign);
            while (given > (_clock.GetElapsedTime(startedAt) * FastestPace) + SoundFormat.Buffer && !_stopping.Wait(SoundFormat.Period))
            {
                // Ahead of the clock: the next period is not due yet.
            }
        }
    }

    /// <returns>The error when it could not be mended, or null.</returns>
    private int? Write(ReadOnlySpan<byte> frames)
    {
        var recoveries = 0;
        while (frames.Length > 0)
        {
            var taken = _pcm.Write(frames);
            if (taken < 0)
            {
                var error = ++recoveries > MostRecoveriesInARow ? taken : _pcm.Recover(taken);
                if (error < 0)
                {
                    return error;
                }

                continue;
            }

            recoveries = 0;
            frames = frames[(taken * SoundFormat.Shorts.BlockAlign)..];
        }

        return null;
    }
}
