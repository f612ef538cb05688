namespace AimTrainer.Display;

/// <summary>One note of a cue.</summary>
/// <param name="Pitch">Its pitch.</param>
/// <param name="Length">How long it sounds, its rise and fall included.</param>
/// <param name="Tone">Its colour.</param>
/// <param name="Place">Where it is heard from.</param>
public readonly record struct CueNote(Pitch Pitch, TimeSpan Length, CueTone Tone, CuePlace Place);
