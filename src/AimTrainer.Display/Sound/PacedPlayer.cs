using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>
/// A device without a card: it takes samples at the pace of a clock, a period at a time and never more than
/// <see cref="SoundFormat.Buffer"/> ahead, and drops them or writes them to a stream.
/// </summary>
/// <param name="clock">Its pace.</param>
/// <param name="into">What the samples are written to, closed with the player; null to drop them.</param>
public sealed class PacedPlayer(TimeProvider clock, Stream? into) : IWavePlayer
{
    private readonly Lock _lock = new();
    private IWaveProvider? _samples;
    private byte[] _period = [];
    private ITimer? _timer;
    private long _startedAt;
    private long _given;

    /// <inheritdoc/>
    public event EventHandler<StoppedEventArgs>? PlaybackStopped;

    /// <inheritdoc/>
    public PlaybackState PlaybackState { get; private set; } = PlaybackState.Stopped;

    /// <inheritdoc/>
    public WaveFormat OutputWaveFormat => _samples?.WaveFormat ?? SoundFormat.Shorts;

    /// <summary>Always 1: the mixer sets the volume.</summary>
    /// <exception cref="NotSupportedException">Set to anything else.</exception>
    public float Volume
    {
        get => 1;
        set => _ = value == 1 ? value : throw new NotSupportedException("the mixer sets the volume");
    }

    /// <inheritdoc/>
    public void Init(IWaveProvider waveProvider)
    {
        ArgumentNullException.ThrowIfNull(waveProvider);
        _samples = waveProvider;
        _period = new byte[SoundFormat.Frames(SoundFormat.Period) * waveProvider.WaveFormat.BlockAlign];
    }

    /// <inheritdoc/>
    /// <exception cref="InvalidOperationException">Not initialised.</exception>
    public void Play()
    {
        lock (_lock)
        {
            _ = _samples ?? throw new InvalidOperationException("Init comes before Play");
            if (PlaybackState == PlaybackState.Playing)
            {
                return;
            }

            PlaybackState = PlaybackState.Playing;
            (_startedAt, _given) = (clock.GetTimestamp(), 0);
            _timer = clock.CreateTimer(_ => GiveWhatIsDue(), null, SoundFormat.Period, SoundFormat.Period);
        }

        GiveWhatIsDue();
    }

    /// <inheritdoc/>
    public void Pause() => Halt(PlaybackState.Paused, null);

    /// <inheritdoc/>
    public void Stop() => Halt(PlaybackState.Stopped, null);

    /// <inheritdoc/>
    public void Dispose()
    {
        Stop();
        into?.Dispose();
    }

    private void GiveWhatIsDue()
    {
        Exception? failed = null;
        lock (_lock)
        {
            if (PlaybackState != PlaybackState.Playing)
            {
                return;
            }

            var ahead = SoundFormat.Buffer.Ticks / SoundFormat.Period.Ticks;
            var due = ahead + (clock.GetElapsedTime(_startedAt).Ticks / SoundFormat.Period.Ticks);
            try
            {
                for (; _given < due; _given++)
                {
                    var count = _samples!.Read(_period);
                    into?.Write(_period.AsSpan(0, count));
                    if (count == 0)
                    {
                        break;
                    }
                }
            }
            catch (IOException exception)
            {
                failed = exception;
            }

            if (failed is null && _given == due)
            {
                return;
            }
        }

        Halt(PlaybackState.Stopped, failed);
    }

    private void Halt(PlaybackState state, Exception? failed)
    {
        lock (_lock)
        {
            if (PlaybackState == PlaybackState.Stopped)
            {
                return;
            }

            PlaybackState = state;
            _timer?.Dispose();
        }

        if (state == PlaybackState.Stopped)
        {
            PlaybackStopped?.Invoke(this, new StoppedEventArgs(failed));
        }
    }
}
