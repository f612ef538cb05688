using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>The one format of all sound here: 48 000 frames a second, two channels, left first.</summary>
public static class SoundFormat
{
    /// <summary>Frames a second.</summary>
    public const int Rate = 48_000;

    /// <summary>Samples a frame.</summary>
    public const int Channels = 2;

    /// <summary>A device is given this much at a time.</summary>
    public static readonly TimeSpan Period = TimeSpan.FromMilliseconds(5);

    /// <summary>
    /// A device holds at most this much that is not yet heard, the period it was just given included. A cue that has to wait for the
    /// fade of another is heard at most this and <see cref="CueMixer.Fade"/> after it was asked for.
    /// </summary>
    public static readonly TimeSpan Buffer = TimeSpan.FromMilliseconds(20);

    /// <summary>As floating-point numbers, for mixing.</summary>
    public static WaveFormat Floats { get; } = WaveFormat.CreateIeeeFloatWaveFormat(Rate, Channels);

    /// <summary>As 16-bit numbers, which every device takes.</summary>
    public static WaveFormat Shorts { get; } = new(Rate, 16, Channels);

    /// <summary>How many frames a time lasts, rounded to the nearest.</summary>
    public static int Frames(TimeSpan time) => (int)Math.Round(time.TotalSeconds * Rate, MidpointRounding.ToEven);

    /// <summary>How long so many frames last.</summary>
    public static TimeSpan Time(long frames) => TimeSpan.FromTicks(frames * TimeSpan.TicksPerSecond / Rate);
}
