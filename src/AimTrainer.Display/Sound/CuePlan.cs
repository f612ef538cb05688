using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>What is heard of one step of a session.</summary>
public sealed record CuePlan
{
    /// <summary>The most cues of one plan; those beyond it are left out, the last first.</summary>
    public const int Longest = 16;

    /// <summary>The silence between two cues.</summary>
    public static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(70);

    /// <summary>Makes a plan.</summary>
    /// <param name="cues">Played one after another; beyond <see cref="Longest"/> they are left out.</param>
    /// <param name="words">What is said after them when speech is on; null for nothing.</param>
    public CuePlan(ValueList<Cue> cues, string? words)
    {
        Cues = cues.Count > Longest ? ValueList.Create(cues.AsSpan()[..Longest]) : cues;
        Words = words;
    }

    /// <summary>Nothing is heard.</summary>
    public static CuePlan Nothing { get; } = new([], null);

    /// <summary>The cues, first to last.</summary>
    public ValueList<Cue> Cues { get; }

    /// <summary>What is said after them when speech is on; null for nothing.</summary>
    public string? Words { get; }
}
