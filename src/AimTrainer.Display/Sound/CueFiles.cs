using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>Writes cues to WAV files, exactly as they are played at full volume.</summary>
public static class CueFiles
{
    /// <summary>The file name of a cue, without its folder.</summary>
    public static string NameOf(Cue cue) => $"{(int)cue + 1:00}-{CueNames.Of(cue)}.wav";

    /// <summary>Writes one cue as 16-bit samples, 48 000 a second, two channels.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void Write(string path, CueClips clips, Cue cue)
    {
        using var writer = new WaveFileWriter(path, SoundFormat.Shorts);
        foreach (var sample in clips.Of(cue))
        {
            writer.WriteSample(sample);
        }
    }
}
