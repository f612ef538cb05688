namespace AimTrainer.Display;

/// <summary>
/// Makes the samples of a cue. Notes are sums of a few harmonics, all far below half the sample rate, so nothing folds back; they
/// rise and fall along a raised cosine, so nothing clicks; each cue is scaled to one peak.
/// </summary>
public static class CueSynth
{
    /// <summary>The largest sample of a cue: 3 dB below full scale.</summary>
    /// <remarks>Full scale: the peak of the largest sine that fits, 1.0. Source: AES17, IEC 61606 (dBFS), from memory.</remarks>
    public const double Peak = 0.70794578438413791;

    // Of the amplitude, to the far loudspeaker: 14 dB down, so that a side is plain and still heard with one loudspeaker.
    private const double FarShare = 0.2;
    private const double BellFall = 5;
    private static readonly TimeSpan Rise = TimeSpan.FromMilliseconds(4);
    private static readonly TimeSpan Fall = TimeSpan.FromMilliseconds(15);

    /// <summary>Renders a cue.</summary>
    /// <returns>Samples of <see cref="SoundFormat.Floats"/>, left and right by turns; the first and the last frame are silent.</returns>
    public static float[] Render(CueScore score)
    {
        var rest = SoundFormat.Frames(score.Rest);
        var frames = (rest * (score.Notes.Count - 1)) + 1;
        foreach (var note in score.Notes)
        {
            frames += SoundFormat.Frames(note.Length);
        }

        var samples = new double[frames * SoundFormat.Channels];
        var start = 0;
        foreach (var note in score.Notes)
        {
            Add(note, samples.AsSpan(start * SoundFormat.Channels));
            start += SoundFormat.Frames(note.Length) + rest;
        }

        return Scaled(samples);
    }

    private static void Add(CueNote note, Span<double> samples)
    {
        var frames = SoundFormat.Frames(note.Length);
        var (left, right) = note.Place switch
        {
            CuePlace.Left => (1.0, FarShare),
            CuePlace.Right => (FarShare, 1.0),
            _ => (1.0, 1.0),
        };
        for (var i = 0; i < frames; i++)
        {
            var turn = Math.Tau * note.Pitch.Hertz * i / SoundFormat.Rate;
            var value = Shape(note.Tone, turn) * Envelope(note.Tone, i, frames);
            samples[i * SoundFormat.Channels] += left * value;
            samples[(i * SoundFormat.Channels) + 1] += right * value;
        }
    }

    // The highest harmonic is the fifth of 3520 Hz: 17.6 kHz, below the 24 kHz where folding would begin.
    private static double Shape(CueTone tone, double turn) => tone switch
    {
        CueTone.Bell => Math.Sin(turn) + (0.35 * Math.Sin(2 * turn)) + (0.12 * Math.Sin(3 * turn)),
        CueTone.Reed => Math.Sin(turn) + (0.4 * Math.Sin(3 * turn)) + (0.15 * Math.Sin(5 * turn)),
        _ => Math.Sin(turn) + (0.08 * Math.Sin(2 * turn)),
    };

    private static double Envelope(CueTone tone, int frame, int frames)
    {
        var edge = Ramp(frame, SoundFormat.Frames(Rise)) * Ramp(frames - frame, SoundFormat.Frames(Fall));
        return tone == CueTone.Bell ? edge * Math.Exp(-BellFall * frame / SoundFormat.Rate) : edge;
    }

    private static double Ramp(int frame, int length) => frame >= length ? 1 : 0.5 - (0.5 * Math.Cos(Math.PI * frame / length));

    private static float[] Scaled(double[] samples)
    {
        var largest = 0.0;
        foreach (var sample in samples)
        {
            largest = Math.Max(largest, Math.Abs(sample));
        }

        var scaled = new float[samples.Length];
        for (var i = 0; i < scaled.Length; i++)
        {
            scaled[i] = (float)(samples[i] * Peak / largest);
        }

        return scaled;
    }
}
