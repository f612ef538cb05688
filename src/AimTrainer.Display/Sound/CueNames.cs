namespace AimTrainer.Display;

/// <summary>The names of cues for people and files: <see cref="Cue.HitBest"/> is "hit-best".</summary>
public static class CueNames
{
    /// <summary>The name of a cue.</summary>
    public static string Of(Cue cue) =>
        string.Concat(cue.ToString().Select((letter, index) => char.IsUpper(letter) ? $"{(index > 0 ? "-" : "")}{char.ToLowerInvariant(letter)}" : letter.ToString()));

    /// <summary>The cue of a name, or null.</summary>
    public static Cue? Find(string name) =>
        CueScores.All.AsEnumerable().Select(score => (Cue?)score.Cue).FirstOrDefault(cue => string.Equals(Of(cue!.Value), name, StringComparison.OrdinalIgnoreCase));
}
