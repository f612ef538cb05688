using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>
/// Plays one plan at a time as an endless stream. A new plan takes the place of what sounds: that is faded out within
/// <see cref="Fade"/>, then the new one starts, so two cues never sound together and the sum can never clip. One plan at most
/// waits; a newer one replaces it. Reading makes no garbage and takes no lock.
/// </summary>
public sealed class CueMixer : ISampleProvider
{
    /// <summary>How long what sounds takes to give way.</summary>
    public static readonly TimeSpan Fade = TimeSpan.FromMilliseconds(5);

    private static readonly int FadeFrames = SoundFormat.Frames(Fade);
    private static readonly int RestFrames = SoundFormat.Frames(CuePlan.Rest);

    private readonly CueClips _clips;
    private CuePlan? _arrived;
    private volatile bool _sounding;
    private volatile float _volume = 1;
    private volatile bool _muted;

    // Only the reader touches these.
    private CuePlan _plan = CuePlan.Nothing;
    private CuePlan? _afterFade;
    private int _cue;
    private int _position;
    private int _restLeft;
    private int _fadeLeft;
    private float _gain = 1;

    /// <summary>Makes a mixer that is silent until the first plan.</summary>
    public CueMixer(CueClips clips, Loudness volume)
    {
        _clips = clips;
        Volume = volume;
        _gain = volume.Gain;
    }

    /// <inheritdoc/>
    public WaveFormat WaveFormat => SoundFormat.Floats;

    /// <summary>How loud; a change is spread over a few milliseconds.</summary>
    public Loudness Volume
    {
        get;
        set
        {
            field = value;
            _volume = value.Gain;
        }
    }

    /// <summary>Whether nothing is heard though all goes on.</summary>
    public bool Muted
    {
        get => _muted;
        set => _muted = value;
    }

    /// <summary>Whether nothing sounds and nothing waits.</summary>
    public bool IsQuiet => Volatile.Read(ref _arrived) is null && !_sounding;

    /// <summary>Plays a plan now, in place of what sounds or waits; a plan without cues changes nothing. Any thread may call it.</summary>
    public void Play(CuePlan plan)
    {
        if (plan.Cues.Count > 0)
        {
            Volatile.Write(ref _arrived, plan);
        }
    }

    /// <summary>Fills the buffer, with silence where nothing sounds. Called by the device's thread alone.</summary>
    /// <returns>The length of the buffer: the stream has no end.</returns>
    public int Read(Span<float> buffer)
    {
        if (Volatile.Read(ref _arrived) is not null)
        {
            // Said before the plan is taken, so that nobody finds the mixer quiet in between.
            var alreadySounding = _sounding;
            _sounding = true;
            Take(Interlocked.Exchange(ref _arrived, null)!, alreadySounding);
        }

        var left = buffer;
        while (left.Length > 0 && _sounding)
        {
            left = left[Next(left)..];
        }

        left.Clear();
        ApplyGain(buffer);
        return buffer.Length;
    }

    private void Take(CuePlan plan, bool sounding)
    {
        if (!sounding || _restLeft > 0)
        {
            Begin(plan);
            return;
        }

        _fadeLeft = _afterFade is null ? FadeFrames : _fadeLeft;
        _afterFade = plan;
    }

    private void Begin(CuePlan plan)
    {
        (_plan, _afterFade) = (plan, null);
        (_cue, _position, _restLeft, _fadeLeft) = (0, 0, 0, 0);
    }

    /// <summary>Writes what comes next, up to a change of what sounds.</summary>
    /// <returns>How many samples were written; 0 when only what sounds has changed.</returns>
    private int Next(Span<float> samples)
    {
        if (_restLeft > 0)
        {
            var rest = Math.Min(_restLeft, samples.Length / SoundFormat.Channels);
            samples[..(rest * SoundFormat.Channels)].Clear();
            _restLeft -= rest;
            return rest * SoundFormat.Channels;
        }

        var clip = _clips.Of(_plan.Cues[_cue])[_position..];
        if (clip.Length == 0 || (_afterFade is not null && _fadeLeft == 0))
        {
            GoOn();
            return 0;
        }

        var count = Math.Min(clip.Length, samples.Length);
        if (_afterFade is not null)
        {
            count = Math.Min(count, _fadeLeft * SoundFormat.Channels);
            FadeOut(clip[..count], samples);
        }
        else
        {
            clip[..count].CopyTo(samples);
        }

        _position += count;
        return count;
    }

    private void GoOn()
    {
        if (_afterFade is { } next)
        {
            Begin(next);
        }
        else if (_cue + 1 < _plan.Cues.Count)
        {
            (_cue, _position, _restLeft) = (_cue + 1, 0, RestFrames);
        }
        else
        {
            _sounding = false;
        }
    }

    private void FadeOut(ReadOnlySpan<float> clip, Span<float> samples)
    {
        for (var i = 0; i < clip.Length; i += SoundFormat.Channels)
        {
            _fadeLeft--;
            var share = (float)_fadeLeft / FadeFrames;
            samples[i] = clip[i] * share;
            samples[i + 1] = clip[i + 1] * share;
        }
    }

    private void ApplyGain(Span<float> buffer)
    {
        var wanted = _muted ? 0 : _volume;
        if (_gain == wanted && wanted == 1)
        {
            return;
        }

        var step = 1f / FadeFrames;
        for (var i = 0; i < buffer.Length; i += SoundFormat.Channels)
        {
            _gain += Math.Clamp(wanted - _gain, -step, step);
            buffer[i] *= _gain;
            buffer[i + 1] *= _gain;
        }
    }
}
