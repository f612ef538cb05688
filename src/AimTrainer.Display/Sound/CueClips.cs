namespace AimTrainer.Display;

/// <summary>The samples of every cue, made once so that playing one makes nothing.</summary>
public sealed class CueClips
{
    private readonly float[][] _samples = [.. CueScores.All.AsEnumerable().Select(CueSynth.Render)];

    /// <summary>The samples of a cue, left and right by turns.</summary>
    public ReadOnlySpan<float> Of(Cue cue) => _samples[(int)cue];

    /// <summary>How long a plan sounds, from its first sample to its last.</summary>
    public TimeSpan Length(CuePlan plan)
    {
        var frames = Math.Max(0, plan.Cues.Count - 1) * (long)SoundFormat.Frames(CuePlan.Rest);
        foreach (var cue in plan.Cues)
        {
            frames += Of(cue).Length / SoundFormat.Channels;
        }

        return SoundFormat.Time(frames);
    }
}
