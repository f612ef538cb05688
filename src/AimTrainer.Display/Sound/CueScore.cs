using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>A cue as notes, one after another.</summary>
/// <param name="Cue">Which cue.</param>
/// <param name="Meaning">What it says, in a few words for a list.</param>
/// <param name="Notes">Its notes, at least one.</param>
/// <param name="Rest">The silence between two notes.</param>
public sealed record CueScore(Cue Cue, string Meaning, ValueList<CueNote> Notes, TimeSpan Rest);
